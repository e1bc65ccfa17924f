"""Whatever stands in the content folder, loading ends in a library or in a report of problems."""

import random

import yaml
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from signage.ground.errors import UnreadableInputError
from signage.ground.problem import with_problems
from signage.load.library import load_library
from signage.load.starter import starter_files
from signage.load.yaml.reader import parse_yaml

FILES = starter_files()
NAMES = sorted(FILES)
RELAXED = settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])

ODD = (
    "", "~", "[]", "{}", "no", "0", "-1", "é", "a: b", "'", '"', "{time}", "{", "skin", "bin-a", "gloves",
    "corridor", "[corridor, [x]]", "{x: {y: z}}", "*x", "&x y", "!!int 3", "|", "\t", "9" * 5000, "\u202e",
    "2027-13-45", "\\ud800",
)  # fmt: skip


def outcome(folder, files):
    """Loads the files; only a report of problems, each with a place and a cure, may end it."""
    for name, data in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    problems = ()
    try:
        load_library(folder / "content", {"hand-rub", "inner-glove-on"})
    except UnreadableInputError as error:
        problems = error.problems
        assert problems, "a report without problems"
    for problem in problems:
        assert problem.message
        assert problem.hint
        assert problem.place.path
        f"{problem.place} {problem.message} {problem.hint}".encode()


@given(name=st.sampled_from(NAMES), data=st.binary(max_size=200))
@RELAXED
@example(name="content/kit.yaml", data=b"\xff\xfe")
@example(name="content/kit.yaml", data=b"[" * 5000)
@example(name="content/kit.yaml", data=b"- " * 5000)
@example(name="content/kit.yaml", data=b"{a: " * 2000)
@example(name="content/kit.yaml", data=b"a: *a\n")
@example(name="content/kit.yaml", data=b"? ? ? ?")
@example(name="content/kit.yaml", data=b"a: !<tag:yaml.org,2002:python/object:os.system> x")
def test_random_bytes(tmp_path, name, data):
    outcome(tmp_path, FILES | {name: data})


@given(name=st.sampled_from(NAMES), text=st.text(alphabet="ab:-{}[],&*!|>'\"#%@ \n?\\", max_size=60))
@RELAXED
def test_random_signs_of_yaml(tmp_path, name, text):
    outcome(tmp_path, FILES | {name: text.encode()})


@given(name=st.sampled_from(NAMES), seed=st.integers(0, 10**9), rounds=st.integers(1, 6))
@RELAXED
def test_lines_that_are_lost_doubled_swapped_or_indented(tmp_path, name, seed, rounds):
    chance = random.Random(seed)
    lines = FILES[name].decode().splitlines()
    for _ in range(rounds):
        at = chance.randrange(len(lines))
        match chance.randrange(5):
            case 0:
                del lines[at]
            case 1:
                lines.insert(at, lines[at])
            case 2:
                other = chance.randrange(len(lines))
                lines[at], lines[other] = lines[other], lines[at]
            case 3:
                lines[at] = (
                    " " * chance.randrange(4) + lines[at].lstrip()
                    if chance.random() < 0.5
                    else "  " + lines[at]
                )
            case _:
                cut = chance.randrange(len(lines[at]) + 1)
                lines[at] = lines[at][:cut] + chance.choice(ODD) + lines[at][cut:]
        if not lines:
            break
    outcome(tmp_path, FILES | {name: "\n".join(lines).encode()})


def mutated(value, chance, odds):
    """The tree with some of its values replaced by odd ones or by other parts of the tree."""
    if chance.random() < odds:
        return chance.choice([*ODD, [], {}, [value], {"a": value}, {"do": value}, str(value)[:5]])
    if isinstance(value, dict):
        kept = {key: mutated(below, chance, odds) for key, below in value.items() if chance.random() > odds}
        if kept and chance.random() < odds:
            kept[chance.choice(["do", "step", "text", "x y", "", "seconds", "bin"])] = chance.choice(
                list(kept.values())
            )
        return kept
    if isinstance(value, list):
        return [mutated(below, chance, odds) for below in value]
    return value


@given(name=st.sampled_from(NAMES), seed=st.integers(0, 10**9), odds=st.sampled_from([0.01, 0.05, 0.2]))
@RELAXED
def test_sound_yaml_with_wrong_kinds_and_wrong_names(tmp_path, name, seed, odds):
    tree = yaml.load(FILES[name], Loader=yaml.BaseLoader)  # noqa: S506 - texts only
    changed = mutated(tree, random.Random(seed), odds)
    outcome(tmp_path, FILES | {name: yaml.safe_dump(changed, allow_unicode=True).encode()})


@given(text=st.text(alphabet="ab:-{}[],&*!|>'\"#%@ \n?\\uUx08D", max_size=60))
@RELAXED
def test_the_parser_in_python_never_raises_either(text):
    node, problems = with_problems(parse_yaml(text.encode(), "a.yaml", yaml.SafeLoader))
    assert node is not None or problems
