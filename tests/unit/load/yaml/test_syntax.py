import pytest
import yaml

from signage.ground.problem import with_problems
from signage.load.yaml.reader import parse_yaml

CASES = [
    ("a: b: c\n", 1, 5, "second colon"),
    ("zones\nname: x\n", 2, 5, "second colon"),
    ('a: "open\nb: 1\n', 1, 4, "never closed"),
    ("a: [one, two\nb: 1\n", 1, 4, "not closed"),
    ("a: @home\n", 1, 4, "may not begin with this sign"),
    ("a: 100% `x`\nb: `x`\n", 2, 4, "may not begin with this sign"),
    ('a: "C:\\q"\n', 1, 7, "backslash"),
    ("a:\n  b: 1\n c: 2\n", 3, 2, "line up"),
    ("a:\n - one\n b: 1\n", 3, 2, "mixed"),
    ("a: {b: 1\n", 1, 4, "not closed"),
    ("a: }\n", 1, 4, "closing bracket"),
    ("a: *\n", 1, 5, "& or *"),
    ("a: |x\n  text\n", 1, 5, "line break"),
    ("%YAML 3.0\n---\na: 1\n", 1, 1, "directive"),
    ("a: 'it's'\n", 1, 8, "after the end"),
    ("a: 1\nb: {time} rub\n", 2, 11, "after the end"),
    ("a: 1\nplain words\nc: 2\n", 2, 1, "no colon follows"),
    ("a: - b\n", 1, 4, "mixed"),
]


@pytest.mark.parametrize(("text", "line", "column", "words"), CASES)
def test_a_syntax_error_is_said_in_plain_words_with_its_place(text, line, column, words):
    node, problems = with_problems(parse_yaml(text.encode(), "kit.yaml", yaml.CSafeLoader))
    assert node is None
    (problem,) = problems
    assert problem.code == "LD-8"
    assert problem.hint
    assert (problem.place.line, problem.place.column) == (line, column), problem
    assert words in problem.message


@pytest.mark.parametrize(("text", "line", "column", "words"), CASES)
def test_the_parser_in_python_reports_each_error_too(text, line, column, words):
    node, problems = with_problems(parse_yaml(text.encode(), "kit.yaml", yaml.SafeLoader))
    assert node is None
    assert [problem.code for problem in problems] == ["LD-8"]
    assert abs(problems[0].place.line - line) <= 1


def test_no_word_of_the_parser_reaches_the_message():
    for text, *_ in CASES:
        _, (problem,) = with_problems(parse_yaml(text.encode(), "kit.yaml"))
        assert not any(word in problem.message for word in ("token", "scalar", "node", "mapping values"))
