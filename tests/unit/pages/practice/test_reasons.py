import pytest

from signage.ground.problem import Problem, Severity
from signage.pages.practice.reasons import OTHER_REASON, REASON_BY_CODE, reason_of
from signage.words.fixed.page_texts import PAGE_TEXTS


def finding(code, severity=Severity.S1, step="apron-off"):
    return Problem(code, code, severity, "x", step=step)


def test_every_reason_is_a_fixed_text_and_every_text_for_reasons_is_used():
    known = {text.id for text in PAGE_TEXTS if text.id.startswith("page-why-")}
    assert set(REASON_BY_CODE.values()) | {OTHER_REASON} == known


def test_the_gravest_finding_gives_the_reason_and_of_equals_the_first():
    found = [finding("BN-4", Severity.S2, "a"), finding("LY-1", step="b"), finding("CT-3", step="c")]
    assert (reason_of(found).text, reason_of(found).step) == ("page-why-covered", "b")


def test_a_rule_without_words_of_its_own_still_has_a_reason():
    assert reason_of([finding("XX-9")]).text == OTHER_REASON


@pytest.mark.parametrize("code", sorted(REASON_BY_CODE))
def test_reasons_are_for_rules_that_the_rehearsal_has(code):
    from signage.rehearse.rules.table import RULES

    assert code in {rule.code for rule in RULES}
