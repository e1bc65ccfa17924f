"""One walk through the steps: what is done in which order, from the first look to the last."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from signage.model.choices import ActionVerb, StepCondition
from signage.model.library import Action
from signage.rehearse.ending import look_at_the_end
from signage.rehearse.finding import Finding
from signage.rehearse.judging.after_each import look_after, note_before
from signage.rehearse.judging.readiness import look_before_change
from signage.rehearse.judging.start import look_at_the_start
from signage.rehearse.layout import look_at_ways
from signage.rehearse.movements import Movement, plan
from signage.rehearse.references import look_at_references
from signage.rehearse.rules.layering import LAYERS_IN_A_CIRCLE
from signage.rehearse.state.people import Exposure, Person
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.state.setting import Schedule, Setting
from signage.rehearse.trace import StepState, freeze
from signage.rehearse.verbs.before_each import look_before
from signage.rehearse.verbs.hygiene import pass_time
from signage.rehearse.verbs.table import VERBS

_SAID_OF_WORN_KIT = frozenset(
    {ActionVerb.TOUCH, ActionVerb.ADJUST, ActionVerb.WIPE, ActionVerb.RAISE, ActionVerb.LOWER}
)


@dataclass(frozen=True)
class Walk:
    """What one walk found and whom it exposed.

    If traced, ``trace`` is the state after each step that was done, and ``start`` that before the first.
    """

    findings: tuple[Finding, ...]
    exposures: frozenset[Exposure]
    trace: tuple[StepState, ...]
    start: StepState | None = None


def walk_through(
    setting: Setting,
    schedule: Schedule,
    *,
    without: Collection[str] = (),
    conditions: Collection[str] = (),
    is_traced: bool = False,
) -> Walk:
    """Rehearses the steps in this order.

    Steps whose ``when`` is neither ``always`` nor among ``conditions`` are left out. ``without`` are codes
    of rules that are switched off.
    """
    trace: list[StepState] = []
    scene, skipped = begin(setting, schedule, without)
    start = freeze(scene, "") if is_traced else None
    for movements in plan(schedule, skipped, {StepCondition.ALWAYS, *conditions}):
        do_step(scene, movements)
        if is_traced:
            trace.append(freeze(scene, movements[0].moment.step.id))
    finish(scene)
    return Walk(scene.findings(), exposures_of(scene), tuple(trace), start)


def begin(setting: Setting, schedule: Schedule, without: Collection[str]) -> tuple[Scene, frozenset[int]]:
    """The scene before the first step, and the positions of steps that cannot be rehearsed."""
    scene = Scene(setting, without)
    skipped = look_at_references(scene, schedule)
    _look_at_the_kit(scene, schedule)
    look_at_the_start(scene)
    return scene, skipped


def do_step(scene: Scene, movements: Sequence[Movement]) -> None:
    """The movements of one step, each after the other."""
    scene.used_fixtures.clear()
    for movement in movements:
        scene.moment = movement.moment
        _do(scene, movement)


def finish(scene: Scene) -> None:
    """What is looked at after the last step that was done."""
    look_at_the_end(scene, scene.moment)
    look_at_ways(scene)


def exposures_of(scene: Scene) -> frozenset[Exposure]:
    """Everybody's exposures until now."""
    return frozenset(each for person in scene.people.values() for each in person.exposures)


def _do(scene: Scene, movement: Movement) -> None:
    """One movement: first what is looked at before every one, then what its verb does."""
    action = movement.moment.action
    by = scene.people[action.by]
    act = Act(movement.moment, by, _acted_upon(scene, action, by), movement.seconds)
    look_before(scene, act)
    if not movement.is_continued:
        pass_time(scene, movement.seconds or 0)
        look_before_change(scene, act)
        note_before(scene, act)
        VERBS[action.verb](scene, act)
        look_after(scene, act)


def _acted_upon(scene: Scene, action: Action, by: Person) -> Person:
    """Whom a movement is done to: as written, else the one who does it.

    Somebody who handles a worn garment without wearing it does so to whoever wears it.
    """
    if action.on is not None:
        return scene.people[action.on]
    if action.verb in _SAID_OF_WORN_KIT:
        thing = action.item or action.target
        if thing in scene.setting.garments and thing not in by.worn:
            return next((person for person in scene.people.values() if thing in person.worn), by)
    return by


def _look_at_the_kit(scene: Scene, schedule: Schedule) -> None:
    """Rule LY-0, for the garments of this protocol and those beneath them."""
    named = {action.item for _phase, step in schedule for action in step.actions if action.item is not None}
    worn = {item for person in scene.people.values() for item in person.worn}
    used = (named | worn) & set(scene.setting.garments)
    for circle in scene.layers.circles(sorted(used)):
        message = f"Declared over one another in a circle: {scene.setting.names(circle)}."
        place = scene.setting.garments[circle[0]].at("over")
        scene.report_form(LAYERS_IN_A_CIRCLE, message, place, item=circle[0])
