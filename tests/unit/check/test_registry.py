import pkgutil
from pathlib import Path

import pytest

from signage.check import picture_rules, sheet_rules
from signage.check.registry import all_picture_rules, all_sheet_rules, explanations


@pytest.mark.parametrize("module", [m.name for m in pkgutil.iter_modules(sheet_rules.__path__)])
def test_every_rule_has_a_test_of_its_own(module):
    assert (Path(__file__).parent / f"test_rule_{module}.py").is_file()


@pytest.mark.parametrize("module", [m.name for m in pkgutil.iter_modules(picture_rules.__path__)])
def test_every_picture_rule_has_a_test_of_its_own(module):
    assert (Path(__file__).parent / f"test_picture_rule_{module}.py").is_file()


def test_every_code_of_a_picture_rule_is_explained():
    codes = {rule.explanation.code for rule in all_picture_rules()}
    assert all(code.startswith("PC-") for code in codes)
    assert codes <= explanations().keys()


def test_codes_and_names_are_unique():
    rules = [rule.explanation for rule in (*all_sheet_rules(), *all_picture_rules())]
    assert len({rule.code for rule in rules}) == len({rule.name for rule in rules}) == len(rules)


@pytest.mark.parametrize("code", sorted(explanations()))
def test_every_code_explains_itself(code):
    explanation = explanations()[code]
    for sentence in (explanation.what, explanation.why, explanation.cure):
        assert len(sentence.split()) >= 3
    assert explanation.example
