from collections import Counter
from itertools import permutations

import pytest
from demo import project

from signage.ground.problem import Problem, Severity
from signage.pages.practice.orders import (
    FIRST_REASON,
    RIGHT,
    SAFE,
    UNKNOWN,
    looks_alike,
    order_exercises,
    shuffled,
    window_lengths,
)
from signage.pages.practice.reasons import Examiner, rehearsing
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.variations.alternatives import judge_order, leave_one_out

LIBRARY = project().library
PROTOCOL = LIBRARY.protocols["layered-protection"]
TAKE_OFF = PROTOCOL.phases[1]
HANDS = LIBRARY.protocols["clean-hands"]


def rehearsed(protocol):
    return rehearse(LIBRARY, protocol).findings


def finding_only(findings):
    """An examiner with made-up findings that knows the place of every step."""
    return Examiner(findings, lambda protocol: [step.id for step in protocol.steps])


def order_of(exercise, verdict):
    orders = permutations(range(len(exercise.steps)))
    return next(order for order, found in zip(orders, exercise.verdicts, strict=True) if found == verdict)


@pytest.mark.parametrize("count", range(1, 60))
def test_windows_hold_every_step_once_and_differ_by_one_at_most(count):
    lengths = window_lengths(count)
    assert sum(lengths) == count
    assert max(lengths) <= 5
    assert max(lengths) - min(lengths) <= 1


@pytest.fixture(scope="module")
def exercises():
    return list(order_exercises(PROTOCOL, TAKE_OFF, rehearsing(LIBRARY)))


def test_all_steps_of_a_phase_are_practised_once(exercises):
    assert [step.id for each in exercises for step in each.steps] == [step.id for step in TAKE_OFF.steps]


def test_every_order_has_a_verdict_and_the_sheet_is_right(exercises):
    for exercise in exercises:
        assert len(exercise.verdicts) == len(list(permutations(exercise.steps)))
        assert exercise.verdicts[0] == RIGHT
        assert max(exercise.verdicts) - FIRST_REASON < len(exercise.reasons)


def test_the_learner_does_not_begin_with_the_right_order(exercises):
    for exercise in exercises:
        assert sorted(exercise.shuffled) == list(range(len(exercise.steps)))
        begun = [exercise.steps[key] for key in exercise.shuffled]
        assert not all(looks_alike(one, other) for one, other in zip(begun, exercise.steps, strict=True))


def test_taking_the_respirator_off_in_dirty_air_is_unsafe_for_that_reason(exercises):
    last = exercises[-1]
    ids = [step.id for step in last.steps]
    assert ids[:2] == ["to-clean-side", "respirator-off"]
    order = (1, 0, 2, 3, 4)
    verdict = last.verdicts[list(permutations(range(5))).index(order)]
    reason = last.reasons[verdict - FIRST_REASON]
    assert (reason.text, reason.step) == ("page-why-air", "respirator-off")


def test_standing_up_later_breaks_no_rule_but_is_not_our_order(exercises):
    second = exercises[1]
    order = order_of(second, SAFE)
    assert [second.steps[index].id for index in order][3] == "stand-up"
    assert rehearsed_with(second, order) == []


def test_a_zip_under_the_hood_is_out_of_reach(exercises):
    third = exercises[2]
    assert [step.id for step in third.steps][:3:2] == ["hood-off", "zip-open"]
    assert SAFE not in third.verdicts


def rehearsed_with(exercise, order):
    from signage.pages.practice.orders import rearranged

    start = TAKE_OFF.steps.index(exercise.steps[0])
    changed = rearranged(PROTOCOL, TAKE_OFF, start, [exercise.steps[i] for i in order])
    return [finding.code for finding in rehearsed(changed) if finding.severity is not Severity.S3]


def test_steps_that_look_alike_may_change_places(exercises):
    first = exercises[0]
    alike = [i for i, step in enumerate(first.steps) if step.picture == "rub-outer-gloves"]
    order = list(range(len(first.steps)))
    order[alike[0]], order[alike[1]] = order[alike[1]], order[alike[0]]
    assert first.verdicts[list(permutations(range(5))).index(tuple(order))] == RIGHT


def test_verdicts_are_those_of_a_rehearsal(exercises):
    exercise = exercises[1]
    for order, verdict in list(zip(permutations(range(5)), exercise.verdicts, strict=True))[::17]:
        found = rehearsed_with(exercise, order)
        assert (verdict >= FIRST_REASON) == bool(found)


def test_verdicts_agree_with_the_judgement_of_whole_orders(exercises):
    known = leave_one_out(LIBRARY, PROTOCOL)
    for exercise in exercises:
        start = TAKE_OFF.steps.index(exercise.steps[0])
        for order, verdict in list(zip(permutations(range(5)), exercise.verdicts, strict=True))[1::23]:
            ids = [step.id for step in TAKE_OFF.steps]
            ids[start : start + 5] = [exercise.steps[i].id for i in order]
            judged = judge_order(LIBRARY, PROTOCOL, ids, known)
            assert (verdict >= FIRST_REASON) == bool(judged.findings)
            if verdict == UNKNOWN:
                assert judged.unjudged


def test_an_order_inside_a_hand_technique_is_never_called_safe():
    for phase in HANDS.phases:
        for exercise in order_exercises(HANDS, phase, rehearsing(LIBRARY)):
            assert Counter(exercise.verdicts)[RIGHT] == 1
            assert SAFE not in exercise.verdicts


def test_a_step_that_no_rule_would_miss_makes_an_order_unknown_only_when_it_moves():
    free = [step.id for step in TAKE_OFF.steps if step.id != TAKE_OFF.steps[0].id]
    (first, *_) = order_exercises(PROTOCOL, TAKE_OFF, Examiner(lambda _protocol: [], lambda _protocol: free))
    by_order = dict(zip(permutations(range(5)), first.verdicts, strict=True))
    assert by_order[0, 1, 2, 4, 3] == SAFE
    assert by_order[1, 0, 2, 3, 4] == UNKNOWN


def test_findings_that_the_sheet_has_itself_are_not_held_against_the_learner():
    known = Problem("HH-2", "short", Severity.S2, "x", step="apron-off")
    (first, *_) = order_exercises(PROTOCOL, TAKE_OFF, finding_only(lambda _protocol: [known]))
    assert set(first.verdicts) == {RIGHT, SAFE}
    warning = Problem("HH-7", "often", Severity.S3, "x", step="apron-off")
    changing = iter([[]] + [[warning]] * 1000)
    (first, *_) = order_exercises(PROTOCOL, TAKE_OFF, finding_only(lambda _protocol: next(changing)))
    assert set(first.verdicts) == {RIGHT, SAFE}


def test_shuffling_is_the_same_on_every_run():
    assert shuffled("abcdefgh", "seed") == shuffled("abcdefgh", "seed")
    assert shuffled("abcdefgh", "seed") != shuffled("abcdefgh", "other")
    assert sorted(shuffled("abcdefgh", "seed")) == list("abcdefgh")
