"""Every single slip of a protocol, held against what a second simulator and a reviewer said of them."""

from functools import cache

import pytest
from earlier_protocol import earlier_layered_protection
from rehearsal_edits import demo_library, new_step, with_step_after, without_steps

from signage.rehearse.rehearsal import find, rehearse
from signage.rehearse.state.setting import schedule_of
from signage.rehearse.variations.commuting import Grounds
from signage.rehearse.variations.footprint import Kind
from signage.rehearse.variations.stress import Arrangement, Slip
from signage.rehearse.variations.stress_review import place_of, review_stress

AFTER_FIRST_GLOVE = (
    *("inner-gloves-on", "coverall-on", "zip-close", "boot-covers-on", "respirator-on", "seal-check"),
    *("goggles-on", "hood-on", "apron-on", "outer-gloves-on", "observer-check"),
)
AFTER_COVERALL = (
    *("coverall-off", "rub-after-coverall", "goggles-off", "rub-after-goggles"),
    *("inner-gloves-off", "rub-bare-hands"),
)
OBJECTED = {
    "needs after the first glove": (
        ("EN-10", None),
        [
            (need, step)
            for need in ("fit-tested", "drink-and-toilet", "jewellery-off")
            for step in AFTER_FIRST_GLOVE
        ],
    ),
    "zip closed under hood and apron": (
        ("LY-8", "zip-close"),
        [("zip-close", step) for step in ("hood-on", "apron-on", "outer-gloves-on", "observer-check")],
    ),
    "still on the dirty chair after the coverall": (
        ("FX-2", "coverall-off"),
        [("stand-up", step) for step in AFTER_COVERALL],
    ),
    "zip opened under apron and hood": (("LY-8", "zip-open"), [("zip-open", "to-dirty-side")]),
}
"""Moves that the rehearsal once passed and a reviewer objected to: a step, and the step that it is moved
behind; with the rule that must find them, and where."""


@cache
def review():
    return review_stress(demo_library(), earlier_layered_protection())


def moved_behind(protocol, name, other):
    return with_step_after(
        without_steps(protocol, name), other, next(step for step in protocol.steps if step.id == name)
    )


@pytest.mark.parametrize("group", OBJECTED)
def test_what_a_reviewer_objects_to_is_found_by_its_rule(group):
    (code, where), moves = OBJECTED[group]
    for name, other in moves:
        found = rehearse(demo_library(), moved_behind(earlier_layered_protection(), name, other)).findings
        assert (code, where or name) in {(finding.code, finding.step) for finding in found}, (name, other)


def test_a_reviewer_objected_to_forty_four_moves():
    assert sum(len(moves) for _rule, moves in OBJECTED.values()) == 44


def test_as_many_orders_are_rehearsed_as_there_are_single_slips():
    """Drops, moves, exchanges and copies of 42 steps: as many as the second simulator walked."""
    assert review().stress.rehearsed == {
        Slip.DROP: 42,
        Slip.MOVE: 1722,
        Slip.EXCHANGE: 820,
        Slip.AGAIN: 1806,
    }


def test_the_clean_orders_are_those_that_rehearsed_alone_have_no_finding():
    walked, clean = review().stress.walked, set(review().stress.clean)
    known = {finding.identity for finding in walked.found.findings}
    schedule = schedule_of(earlier_layered_protection())
    slips = [
        Arrangement(slip, step, place)
        for step in range(0, 42, 3)
        for place in range(0, 43, 5)
        for slip in (Slip.MOVE, Slip.EXCHANGE)
        if place not in (step, step + 1) and (slip is Slip.MOVE or step < place < 42)
    ]
    for slip in slips:
        start, end = slip.window
        order = (*schedule[:start], *(schedule[index] for index in slip.inside), *schedule[end:])
        found = find(walked.setting, order).findings
        assert (slip in clean) == all(finding.identity in known for finding in found), slip


def test_every_clean_move_has_a_reason_unless_a_reviewer_objects_to_it():
    """Besides, an outer layer may not go on over an open zip: that is the same slip from the other side."""
    objected = {(name, f"after {other}") for _rule, moves in OBJECTED.values() for name, other in moves}
    objected |= {("zip-open", "before rub-outer-first")}
    objected |= {("apron-on", "before zip-close"), ("outer-gloves-on", "before zip-close")}
    steps = review().stress.steps
    without_reason = {
        (steps[each.step], place_of(steps, each))
        for each in review().stress.clean
        if each.slip is Slip.MOVE and review().reasons[each].grounds is Grounds.NONE
    }
    assert without_reason <= objected


def reason_of_move(name, place):
    steps = review().stress.steps
    return next(
        reason
        for each, reason in review().reasons.items()
        if (each.slip, steps[each.step], place_of(steps, each)) == (Slip.MOVE, name, place)
    )


def test_a_reason_says_what_the_steps_have_nothing_in_common_of():
    apart = reason_of_move("drink-and-toilet", "after inspect-kit")
    assert apart.grounds is Grounds.NOTHING_SHARED
    assert apart.disjoint == tuple(Kind)
    by_hand = reason_of_move("boot-covers-on", "after respirator-on")
    assert by_hand.unchanged == (Kind.HANDS,)
    assert Kind.SITE in by_hand.disjoint


def test_what_is_in_common_and_as_before_is_told_with_its_state():
    reason = reason_of_move("stand-on-mat", "before respirator-off")
    assert reason.grounds is Grounds.SHARED_AS_BEFORE
    assert {(each.kind, each.now) for each in reason.in_common} == {(Kind.DUTY, "none")}


REASONED = (Grounds.NOTHING_SHARED, Grounds.SHARED_AS_BEFORE)


def ends_alike(walk, arrangement):
    """Whether all is, after the steps that changed places, as it is after them in their own order."""
    start, end = arrangement.window
    own, theirs = walk.branch(start), walk.branch(start)
    for index in range(start, end):
        own.do(index)
    for index in arrangement.inside:
        theirs.do(index)
    return as_told(own.scene) == as_told(theirs.scene)


def as_told(scene):
    """Everybody, but for what was removed last, and whether hands have dried in the meantime."""
    copy = scene.copy()
    for person in copy.people.values():
        person.wet, person.pending = None, bool(person.pending)
    return copy.people, copy.fixtures, copy.things, copy.bags, copy.contaminated_zones


@pytest.mark.parametrize("name", ["layered-protection", "spill", "waste-out", "contact-room", "gone-wrong"])
def test_steps_that_may_change_places_leave_everybody_and_everything_alike(name):
    told = review_stress(demo_library(), demo_library().protocols[name])
    reasoned = [each for each in told.stress.clean if told.reasons[each].grounds in REASONED]
    reasoned = [each for each in reasoned if each.slip in (Slip.MOVE, Slip.EXCHANGE)]
    assert reasoned
    for each in reasoned:
        for walk in told.stress.walked.walks:
            assert ends_alike(walk, each), (told.stress.steps[each.step], place_of(told.stress.steps, each))


def test_the_review_counts_every_clean_order_once():
    told = review().as_json()
    assert sum(told["reasons"].values()) == len(told["clean"]) == len(review().stress.clean)
    assert sum(slip["clean"] for slip in told["slips"].values()) == len(told["clean"])
    grouped = [place for groups in review().groups.values() for group in groups for place in group.places]
    assert len(grouped) == len(told["clean"])


def test_findings_of_the_order_as_written_do_not_count_again():
    spoilt = without_steps(earlier_layered_protection(), "rub-after-hood")
    stress = review_stress(demo_library(), spoilt).stress
    assert "HH-1" in {finding.code for finding in stress.walked.found.findings}
    assert stress.clean_count(Slip.MOVE) > 50


def test_a_step_without_effect_is_listed_as_left_out():
    idle = with_step_after(earlier_layered_protection(), "fit-tested", new_step("pause", "wait", seconds=5))
    result = review_stress(demo_library(), idle)
    dropped = [each for each in result.stress.clean if each.slip is Slip.DROP]
    assert [result.stress.steps[each.step] for each in dropped] == ["pause"]
    assert result.reasons[dropped[0]].grounds is Grounds.NONE


def test_where_references_are_faulty_nothing_is_rehearsed():
    faulty = with_step_after(
        earlier_layered_protection(), "apron-on", new_step("odd", "don", item="no-such-thing")
    )
    assert review_stress(demo_library(), faulty).stress.clean == ()
