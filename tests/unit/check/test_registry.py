import ast
import pkgutil
import re
import subprocess
import sys
from pathlib import Path

import pytest

import signage
from signage.check import content_rules, picture_rules, registry, sheet_rules
from signage.check.registry import all_content_rules, all_picture_rules, all_rules, all_sheet_rules
from signage.load import faults

CODE = re.compile(r"[A-Z]{2,3}-[0-9]{1,2}")


def written_codes():
    """Every text in the source that has the form of a code, by the file that it stands in."""
    for path in sorted(Path(signage.__file__).parent.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and CODE.fullmatch(node.value):
                yield node.value, path.name


def rules_made():
    """The code, or where it is given, of every call in the source that makes a rule."""
    for path in sorted(Path(signage.__file__).parent.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Rule":
                named = {keyword.arg: keyword.value for keyword in node.keywords}
                yield ast.literal_eval(named.get("code") or node.args[0])


def test_every_rule_has_a_test_of_its_own():
    for package, prefix in (
        (sheet_rules, "test_rule"),
        (picture_rules, "test_picture_rule"),
        (content_rules, "test_content_rule"),
    ):
        for module in pkgutil.iter_modules(package.__path__):
            assert (Path(__file__).parent / f"{prefix}_{module.name}.py").is_file()


def test_every_code_of_a_rule_stands_under_the_letters_of_its_kind():
    for rules, letters in (
        (all_sheet_rules(), "SH-"),
        (all_picture_rules(), "PC-"),
        (all_content_rules(), "CN-"),
    ):
        codes = {each.rule.code for each in rules}
        assert all(code.startswith(letters) for code in codes)
        assert codes <= all_rules().keys()


def test_every_rule_that_is_made_anywhere_is_registered_once():
    assert sorted(rules_made()) == sorted(all_rules())
    assert {code: where for code, where in written_codes() if code not in all_rules()} == {}


def test_names_are_unique_within_the_letters_of_a_code():
    names = [(code.split("-")[0], rule.name) for code, rule in all_rules().items()]
    assert len(set(names)) == len(names)


def test_each_rule_says_what_why_and_what_to_do_and_gives_an_example():
    for rule in all_rules().values():
        for sentence in (rule.what, rule.why, rule.cure):
            assert len(sentence.split()) >= 3, rule.code
        assert rule.example, rule.code


def test_a_code_that_two_rules_have_is_refused(monkeypatch):
    monkeypatch.setattr(registry.trial_faults, "RULES", (faults.TOO_LARGE,))
    with pytest.raises(ValueError, match="LD-2 is the code of too-large and of too-large"):
        registry.all_rules.__wrapped__()


def test_the_tables_of_other_rooms_are_read_without_a_library_that_draws():
    tables = "load.faults", "words.rules", "rehearse.rules.table", "pages.rules", "trials.faults"
    program = (
        f"import sys, {', '.join(f'signage.{table}' for table in tables)}\n"
        "print(sorted({'uharfbuzz', 'pathops', 'pydantic', 'reportlab', 'signage.compose'} & {*sys.modules}))"
    )
    result = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert result.stdout == "[]\n"
