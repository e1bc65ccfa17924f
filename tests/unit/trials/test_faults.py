import pytest

from signage.trials.faults import RULES


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_every_fault_explains_itself(rule):
    for sentence in (rule.what, rule.why, rule.cure):
        assert len(sentence.split()) >= 4
    assert rule.example


def test_codes_and_names_are_unique():
    assert len({rule.code for rule in RULES}) == len({rule.name for rule in RULES}) == len(RULES)
