"""Every code that the programme can print is explained."""

import ast
import re
from pathlib import Path

import signage
from signage.cli.explain import all_explanations

CODE = re.compile(r"[A-Z]{2,3}-[0-9]{1,2}")


def written_codes():
    """Every text in the source that has the form of a code, by the file that it stands in."""
    for path in sorted(Path(signage.__file__).parent.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and CODE.fullmatch(node.value):
                yield node.value, path.name


def test_every_code_in_the_source_can_be_explained():
    unknown = {code: where for code, where in written_codes() if code not in all_explanations()}
    assert unknown == {}


def test_each_explanation_says_what_why_and_what_to_do():
    for explanation in all_explanations().values():
        for sentence in (explanation.what, explanation.why, explanation.cure):
            assert len(sentence.split()) >= 3, explanation.code
        assert explanation.example, explanation.code
