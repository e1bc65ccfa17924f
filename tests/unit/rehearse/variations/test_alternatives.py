"""Steps left out, exchanged and reordered."""

from dataclasses import replace

import pytest
from rehearsal_edits import demo_library, layered_protection, new_step, with_step_after, without_steps

from signage.ground.problem import Severity
from signage.rehearse.variations.alternatives import (
    free_swaps,
    judge_order,
    leave_one_out,
    with_marks,
)

HANDS = demo_library().protocols["clean-hands"]
ORDER = [step.id for step in layered_protection().steps]


def exchanged(order, one, other):
    order = list(order)
    first, second = order.index(one), order.index(other)
    order[first], order[second] = order[second], order[first]
    return order


class TestLeavingOut:
    result = leave_one_out(demo_library(), layered_protection())

    def test_how_bad_it_is_to_leave_a_step_out(self):
        assert self.result.criticality["seal-check"] is Severity.S1
        assert self.result.criticality["drink-and-toilet"] is Severity.S2

    def test_critical_steps_are_those_that_give_an_s1_or_that_the_author_marked(self):
        steps = layered_protection().steps
        derived = {name for name, worst in self.result.criticality.items() if worst is Severity.S1}
        marked = {step.id for step in steps if step.critical}
        assert set(self.result.critical) == derived | marked
        assert "observer-check" in marked - derived

    def test_a_second_inspection_is_unexplained(self):
        protocol = with_step_after(layered_protection(), "inspect-kit", new_step("again", "inspect"))
        result = leave_one_out(demo_library(), protocol)
        assert set(result.unexplained) == {"inspect-kit", "again"}, "each can stand in for the other"

    def test_a_rationale_explains(self):
        result = leave_one_out(demo_library(), HANDS)
        assert result.load_bearing == ()
        assert result.unexplained == ()

    def test_what_was_wrong_before_is_not_blamed_on_the_step(self):
        protocol = without_steps(layered_protection(), "zip-close")
        result = leave_one_out(demo_library(), protocol)
        assert result.criticality["drink-and-toilet"] is Severity.S2


class TestJudgingAnOrder:
    def judge(self, order, protocol=None):
        return judge_order(demo_library(), protocol or layered_protection(), order)

    def test_the_own_order_is_accepted(self):
        assert self.judge(ORDER).is_accepted

    def test_a_free_swap_is_accepted(self):
        assert self.judge(exchanged(ORDER, "hood-on", "apron-on")).is_accepted

    def test_another_order_is_judged_by_its_findings(self):
        judgement = self.judge(exchanged(ORDER, "hood-off", "goggles-off"))
        assert ("LY-1", "goggles-off") in {(f.code, f.step) for f in judgement.findings}
        assert not judgement.is_accepted

    def test_the_order_of_one_phase_is_enough(self):
        phase = [step.id for step in layered_protection().phases[0].steps]
        judgement = self.judge(exchanged(phase, "respirator-on", "goggles-on"))
        assert "LY-2" in {f.code for f in judgement.findings}

    @pytest.mark.parametrize("order", [ORDER[1:], [*ORDER, ORDER[0]], ["nothing"], []])
    def test_steps_must_be_named_once(self, order):
        with pytest.raises(ValueError, match="once"):
            self.judge(order)

    def test_movements_of_a_technique_card_cannot_be_judged(self):
        """The model does not look into one hand hygiene; the published order of its movements stands."""
        order = exchanged([step.id for step in HANDS.steps], "palms", "thumbs")
        judgement = self.judge(order, HANDS)
        assert judgement.findings == ()
        assert {"palms", "thumbs"} <= set(judgement.unjudged)
        assert not judgement.is_accepted

    def test_a_wait_must_stay_where_it_is(self):
        wait = new_step("let-it-dry", "wait", seconds=30)
        protocol = with_step_after(layered_protection(), "apron-on", wait)
        order = exchanged([step.id for step in protocol.steps], "apron-on", "let-it-dry")
        assert self.judge(order, protocol).unjudged == ("let-it-dry",)
        assert ("hood-on", "apron-on") in free_swaps(demo_library(), protocol)
        assert not any("let-it-dry" in pair for pair in free_swaps(demo_library(), protocol))


def test_movements_of_a_technique_card_are_never_called_free():
    assert free_swaps(demo_library(), HANDS) == ()


def test_every_critical_step_is_marked_where_policy_says_nothing():
    policy = {name: value for name, value in demo_library().policy.items() if name != "critical-marks"}
    steps = leave_one_out(replace(demo_library(), policy=policy), layered_protection())
    assert steps.marked == steps.critical
    assert len(steps.marked) == 34


def test_policy_may_keep_the_mark_for_steps_without_which_something_reaches_the_body():
    authors = {step.id for step in layered_protection().steps if step.critical}
    marked = set(leave_one_out(demo_library(), layered_protection()).marked)
    assert authors <= marked
    assert marked - authors == {
        *("inner-gloves-on", "coverall-on", "goggles-on", "hood-on"),
        *("to-dirty-side", "to-clean-side"),
    }


def test_an_author_can_add_marks_and_never_takes_one_away():
    protocol = layered_protection()
    marked = with_marks(protocol, ["hood-on"])
    added = {s.id for s in marked.steps if s.critical} - {s.id for s in protocol.steps if s.critical}
    assert added == {"hood-on"}
    assert [s.id for s in marked.steps] == [s.id for s in protocol.steps]
