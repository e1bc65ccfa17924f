import pkgutil
from pathlib import Path

from signage.check import content_rules, picture_rules, sheet_rules
from signage.check.registry import all_content_rules, all_picture_rules, all_sheet_rules, explanations


def test_every_rule_has_a_test_of_its_own():
    for package, prefix in (
        (sheet_rules, "test_rule"),
        (picture_rules, "test_picture_rule"),
        (content_rules, "test_content_rule"),
    ):
        for module in pkgutil.iter_modules(package.__path__):
            assert (Path(__file__).parent / f"{prefix}_{module.name}.py").is_file()


def test_every_code_of_a_rule_is_explained_under_the_letters_of_its_kind():
    for rules, letters in (
        (all_sheet_rules(), "SH-"),
        (all_picture_rules(), "PC-"),
        (all_content_rules(), "CN-"),
    ):
        codes = {rule.explanation.code for rule in rules}
        assert all(code.startswith(letters) for code in codes)
        assert codes <= explanations().keys()


def test_codes_and_names_are_unique():
    rules = [rule.explanation for rule in (*all_sheet_rules(), *all_picture_rules(), *all_content_rules())]
    assert len({rule.code for rule in rules}) == len({rule.name for rule in rules}) == len(rules)
