"""Surfaces meet: hands with things, and what hangs over with what lies beneath."""

from __future__ import annotations

from collections.abc import Collection

from signage.rehearse.rules.contact import BARE_HAND_CONTAMINATED
from signage.rehearse.state.body import HANDS
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person
from signage.rehearse.state.scene import Scene


def hand_meets(scene: Scene, person: Person, level: Level, what: str, without: Collection[str] = ()) -> None:
    """The outermost hand layer of a person meets a surface of ``what``.

    ``without`` are gloves that leave in the same movement. A bare hand that meets contamination is an
    exposure (rule CT-1).
    """
    if level is Level.CONTAMINATED and person.top_glove(without) is None:
        scene.report(
            BARE_HAND_CONTAMINATED,
            f"A bare hand meets the contaminated surface of: {scene.name(what)}.",
            item=what,
            person=person,
        )
        scene.expose(person, HANDS, what)
    person.join_hand(level, without)


def hand_and_garment_meet(scene: Scene, hands: Person, wearer: Person, item: str) -> Level:
    """Hands hold the outside of something worn; both take the higher level, which is returned."""
    worn = wearer.worn[item]
    before = worn.outside
    worn.join(hands.hand_level())
    hand_meets(scene, hands, before, item)
    return max(before, worn.outside)


def hand_and_fixture_meet(scene: Scene, person: Person, fixture: str) -> None:
    """Hands touch a fixture; both take the higher level."""
    state = scene.use(fixture)
    before = state.level
    state.level = max(before, person.hand_level())
    hand_meets(scene, person, before, fixture)
