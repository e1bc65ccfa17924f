"""Waivers: who may accept what, and until when."""

from datetime import date

import pytest
from rehearsal_edits import demo_library, layered_protection, with_action, with_policy

from signage.ground.place import Place
from signage.model.waiver import Waiver
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.waivers import apply_waivers

TODAY = date(2027, 3, 1)
SHORT_RUB = rehearse(demo_library(), with_action(layered_protection(), "rub-after-hood", seconds=5)).findings
WRONG_BIN = rehearse(demo_library(), with_action(layered_protection(), "goggles-off", bin="bin-a")).findings


def waiver(code="HH-2", step="rub-after-hood", expires=TODAY):
    return Waiver(
        code=code,
        protocol="layered-protection",
        step=step,
        reason="The dispenser counts the time.",
        role="infection-control nurse",
        expires=expires,
        place=Place("waivers.yaml", 3),
    )


def test_a_waiver_excuses_its_finding_up_to_and_on_its_last_day():
    result = apply_waivers(SHORT_RUB, [waiver()], TODAY)
    assert result.standing == ()
    assert [(f.code, w.role) for f, w in result.waived] == [("HH-2", "infection-control nurse")]
    assert result.problems == ()


def test_an_expired_waiver_excuses_nothing_and_is_a_problem_of_its_own():
    result = apply_waivers(SHORT_RUB, [waiver(expires=date(2027, 2, 28))], TODAY)
    assert result.standing == SHORT_RUB
    (problem,) = result.problems
    assert (problem.code, problem.place.line) == ("WV-1", 3)
    assert "2027-02-28" in problem.message


def test_a_finding_that_can_hurt_is_never_waived():
    result = apply_waivers(WRONG_BIN, [waiver("BN-3", "goggles-off")], TODAY)
    assert result.standing == WRONG_BIN
    assert [problem.code for problem in result.problems] == ["WV-2"]


@pytest.mark.parametrize("other", [waiver("HH-3"), waiver(step="rub-after-zip"), waiver(step=None)])
def test_a_waiver_that_fits_nothing_is_told(other):
    result = apply_waivers(SHORT_RUB, [other], TODAY)
    assert result.standing == SHORT_RUB
    assert [problem.code for problem in result.problems] == ["WV-3"]


def test_a_waiver_of_one_step_leaves_the_same_finding_in_another():
    findings = rehearse(with_policy(demo_library(), "glove-hygiene-limit", 3), layered_protection()).findings
    result = apply_waivers(findings, [waiver("HH-7", "rub-after-coverall")], TODAY)
    assert [finding.step for finding in result.standing] == ["rub-after-goggles"]


def test_two_waivers_of_one_finding_count_once():
    result = apply_waivers(SHORT_RUB, [waiver(), waiver()], TODAY)
    assert len(result.waived) == 1
    assert result.problems == ()
