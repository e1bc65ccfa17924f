"""Seats, mats, and disinfecting them."""

from __future__ import annotations

from signage.rehearse.rules.places import (
    CONTACT_TIME_TOO_SHORT,
    FIXTURE_ABSENT,
    FIXTURE_ELSEWHERE,
    MAT_NOT_CHARGED,
    STILL_SEATED,
)
from signage.rehearse.state.level import Level
from signage.rehearse.state.meeting import hand_and_fixture_meet
from signage.rehearse.state.scene import Act, FixtureState, Scene
from signage.rehearse.verbs.seats import get_up, rest_on_seat
from signage.rehearse.verbs.things import clean_thing
from signage.rehearse.verbs.touching import report_shared


def sit(scene: Scene, act: Act) -> None:
    """A person sits down."""
    person, key = act.by, act.action.chair or ""
    scene.use(key)
    if person.seat is not None:
        message = f"Still seated on {scene.name(person.seat)} when told to sit on {scene.name(key)}."
        scene.report(STILL_SEATED, message, item=key, person=person, field="chair")
    if not scene.is_here(key, person):
        message = f"{scene.name(key)} is not in zone {scene.name(person.zone)}."
        scene.report(FIXTURE_ELSEWHERE, message, item=key, person=person, field="chair")
    report_shared(scene, person, key)
    person.seat, person.was_told_of_seat = key, False
    rest_on_seat(scene, person)


def stand(scene: Scene, act: Act) -> None:
    """A person gets up."""
    get_up(scene, act.by)


def disinfect(scene: Scene, act: Act) -> None:
    """A fixture or thing is disinfected; if its contact time is not kept, nothing changes (rule FX-4)."""
    key = act.action.fixture
    if key is None:
        clean_thing(scene, act, act.action.thing or "")
        return
    if not scene.is_here(key, act.by):
        message = f"{scene.name(key)} is not in zone {scene.name(act.by.zone)}."
        scene.report(FIXTURE_ELSEWHERE, message, item=key, person=act.by, field="fixture")
    hand_and_fixture_meet(scene, act.by, key)
    state = scene.fixtures[key]
    if _is_long_enough(scene, act, state):
        state.level, state.last_user = Level.CLEAN, None


def stand_on_mat(scene: Scene, act: Act) -> None:
    """Soles become ``reduced``, if the mat is here, charged, and given its contact time."""
    key = act.action.fixture or next(
        (f.id for f in scene.setting.fixtures_of_zone[act.by.zone] if f.kind == "mat"), None
    )
    if key is None or not scene.is_here(key, act.by):
        message = f"No mat in zone {scene.name(act.by.zone)}."
        scene.report(FIXTURE_ABSENT, message, item="mat", person=act.by, field="fixture")
        return
    state = scene.use(key)
    if not state.is_charged:
        message = f"{scene.name(key)} is declared as not charged."
        scene.report(MAT_NOT_CHARGED, message, item=key, person=act.by)
    elif _is_long_enough(scene, act, state):
        act.by.soles = min(act.by.soles, Level.REDUCED)


def _is_long_enough(scene: Scene, act: Act, state: FixtureState) -> bool:
    """Rule FX-4."""
    wanted, given = state.fixture.contact_seconds, act.seconds
    if wanted is None or (given is not None and given >= wanted):
        return True
    found = "No time is named" if given is None else f"{given} s"
    message = f"{found}; {scene.name(state.fixture.id)} needs at least {wanted} s."
    scene.report(CONTACT_TIME_TOO_SHORT, message, item=state.fixture.id, person=act.by, field="seconds")
    return False


def do_nothing(scene: Scene, act: Act) -> None:
    """Waiting, speaking and branching change nothing that the model knows."""
