from itertools import pairwise

import pytest
import yaml

from signage.ground.place import Place
from signage.ground.problem import with_problems
from signage.load.validation import plain
from signage.load.yaml.nodes import Sequence, Table, Text
from signage.load.yaml.reader import DEEPEST, parse_yaml, read_yaml

PARSERS = [yaml.SafeLoader, *([yaml.CSafeLoader] if hasattr(yaml, "CSafeLoader") else [])]


@pytest.fixture(params=PARSERS, ids=lambda parser: parser.__name__)
def parse(request):
    def run(text):
        data = text if isinstance(text, bytes) else text.encode()
        node, problems = with_problems(parse_yaml(data, "kit.yaml", request.param))
        return node, [(str(problem.place), problem.code) for problem in problems]

    return run


def test_every_key_and_value_knows_line_and_column(parse):
    node, problems = parse("name: Mühle\nzones:\n  hall: {class: 'clean'}\n  list:\n  - one\n  - two: 2\n")
    assert problems == []
    assert isinstance(node, Table)
    assert node.values["name"] == Text("Mühle", Place("kit.yaml", 1, 7))
    zones = node.values["zones"]
    assert (zones.place, zones.key_place("hall")) == (Place("kit.yaml", 3, 3), Place("kit.yaml", 3, 3))
    assert zones.values["hall"].values["class"] == Text("clean", Place("kit.yaml", 3, 17), is_plain=False)
    entries = zones.values["list"]
    assert isinstance(entries, Sequence)
    assert [item.place for item in entries.items] == [Place("kit.yaml", 5, 5), Place("kit.yaml", 6, 5)]
    assert entries.items[1].values["two"].place == Place("kit.yaml", 6, 10)


def test_columns_count_characters_not_bytes_or_utf_16_units(parse):
    node, _ = parse("{الاسم: مئزر, 𝔞: x}\n")
    assert node.key_places == {"الاسم": Place("kit.yaml", 1, 2), "𝔞": Place("kit.yaml", 1, 15)}


@pytest.mark.parametrize(
    "written",
    [
        "no",
        "off",
        "yes",
        "012",
        "0o14",
        "1_000",
        "2027-05-31",
        "1e3",
        "0x1F",
        "~",
        "null",
        "1:30",
        ".inf",
        "<<",
    ],
)
def test_scalars_stay_the_texts_that_were_written(parse, written):
    node, problems = parse(f"value: {written}\n")
    assert (plain(node), problems) == ({"value": written}, [])


def test_block_texts_and_quoted_texts_are_read(parse):
    node, problems = parse('a: "two\\nlines \\u00e9"\nb: |\n  first\n  second\nc: >-\n  one\n  line\n')
    assert plain(node) == {"a": "two\nlines é", "b": "first\nsecond\n", "c": "one line"}
    assert problems == []


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a: 1\nb: 2\na: 3\n", [("kit.yaml:3:1", "LD-9")]),
        ("a: {b: 1, b: 2}\na: 3\n", [("kit.yaml:1:11", "LD-9"), ("kit.yaml:2:1", "LD-9")]),
        ("a: &here 1\nb: *here\n", [("kit.yaml:1:4", "LD-10"), ("kit.yaml:2:4", "LD-10")]),
        ("a: &all [1]\n", [("kit.yaml:1:4", "LD-10")]),
        ("a: !!python/object/apply:os.system ['true']\n", [("kit.yaml:1:4", "LD-10")]),
        ("a: !thing {b: 1}\nc: !!int 3\n", [("kit.yaml:1:4", "LD-10"), ("kit.yaml:2:4", "LD-10")]),
        ("a: 1\n---\nb: 2\n", [("kit.yaml:2:1", "LD-10")]),
        ("? [a, b]\n: 1\n", [("kit.yaml:1:3", "LD-10")]),
        ("{a: 1}: 2\n", [("kit.yaml:1:1", "LD-10")]),
        ("a: " + "[" * 30 + "]" * 30, [("kit.yaml:1:23", "LD-10")]),
    ],
)
def test_refused_features_are_reported_at_their_place(parse, text, expected):
    assert parse(text)[1] == expected


def test_nesting_up_to_the_limit_is_read(parse):
    deep = "a: " + "[" * (DEEPEST - 1) + "]" * (DEEPEST - 1)
    assert parse(deep)[1] == []


def test_an_alias_bomb_is_refused_line_by_line_and_not_expanded(parse):
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x]"]
    lines += [
        f"{new}: &{new} [{', '.join([f'*{old}'] * 9)}]" for old, new in pairwise(f"a{i}" for i in range(9))
    ]
    node, problems = parse("\n".join(lines) + "\n")
    assert {code for _, code in problems} == {"LD-10"}
    assert len(problems) == 9 + 8 * 9
    assert len(node.values["a8"].items) == 9


def test_after_a_repeated_key_the_first_value_counts_and_the_message_names_its_line():
    node, problems = with_problems(parse_yaml(b"a: 1\nb: 2\na: 3\n", "kit.yaml"))
    assert plain(node)["a"] == "1"
    assert "line 1" in problems[0].message


def test_the_message_of_an_alias_says_to_write_the_value_out():
    _, problems = with_problems(parse_yaml(b"a: &x 1\nb: *x\n", "kit.yaml"))
    assert problems[1].message == "The alias *x stands here."
    assert problems[1].hint == "Write the value out in full."


@pytest.mark.parametrize("text", ["", "\n\n", "# only a remark\n", "---\n", "   \n"])
def test_an_empty_file_is_reported(parse, text):
    node, problems = parse(text)
    if text == "---\n":  # a document that holds one empty value: the schema reports it
        assert node == Text("", node.place)
        return
    assert (node, problems) == (None, [("kit.yaml:1:1", "LD-7")])


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a:\n\t- one\n", [("kit.yaml:2:1", "LD-6")]),
        ("a:\n  \tb: 1\n", [("kit.yaml:2:3", "LD-6")]),
        ("a: 1\nb: \u202eabc\n", [("kit.yaml:2:4", "LD-5")]),
        ('a: "\\u202Eabc"\n', [("kit.yaml:1:4", "LD-5")]),
        ('a: "\\0"\nb: "\\x07"\n', [("kit.yaml:1:4", "LD-5"), ("kit.yaml:2:4", "LD-5")]),
        ("a: x\x07y\n", [("kit.yaml:1:5", "LD-5")]),
        ("a: x\u2028y\nb: 1\nb: 2\n", [("kit.yaml:1:5", "LD-5"), ("kit.yaml:3:1", "LD-9")]),
        ("\ufeffa: 1\na: 2\n", [("kit.yaml:1:1", "LD-4"), ("kit.yaml:2:1", "LD-9")]),
        (b"a: 1\nb: caf\xe9\n", [("kit.yaml:2:7", "LD-3")]),
        ("a: 1\n".encode("utf-16"), [("kit.yaml:1:1", "LD-3")]),
    ],
)
def test_faults_of_characters_are_reported_at_their_place(parse, text, expected):
    assert parse(text)[1] == expected


def test_direction_isolates_are_left_alone(parse):
    assert parse("a: \u2068abc\u2069\n")[1] == []


def test_a_file_is_read_from_disk_with_its_path_in_every_place(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    path = tmp_path / "Küche 1.yaml"
    path.write_text("a: 1\n", encoding="utf-8")
    node, problems = with_problems(read_yaml(path.relative_to(tmp_path)))
    assert problems == ()
    assert str(node.values["a"].place) == "Küche 1.yaml:1:4"
