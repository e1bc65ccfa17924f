from pathlib import Path

import pytest

from signage.ground.errors import UnreadableInputError
from signage.load.library import load_library


def found(library):
    return [(problem.place.path, problem.code) for problem in library.problems()]


def test_a_missing_folder_is_the_only_problem(tmp_path):
    with pytest.raises(UnreadableInputError) as caught:
        load_library(tmp_path / "content")
    (problem,) = caught.value.problems
    assert problem.code == "LD-1"
    assert "The folder" in problem.message
    assert "signage start" in problem.hint


def test_a_file_in_place_of_the_folder_is_reported(tmp_path):
    (tmp_path / "content").write_text("x")
    with pytest.raises(UnreadableInputError) as caught:
        load_library(tmp_path / "content")
    assert "is a file; a folder was wanted" in caught.value.problems[0].message


def test_every_missing_file_of_an_empty_folder_is_named(library):
    Path("content").mkdir()
    assert found(library) == [
        ("content/kit.yaml", "LD-1"),
        ("content/library.yaml", "LD-1"),
        ("content/policy.yaml", "LD-1"),
        ("content/protocols", "LD-1"),
        ("content/wards", "LD-1"),
    ]


def test_a_library_without_protocols_is_no_library(library):
    library.write()
    Path("content/protocols/apron.yaml").unlink()
    (problem,) = library.problems()
    assert problem.message == "The folder content/protocols holds no protocol."


def test_yaml_files_that_would_be_passed_over_are_reported(library):
    library.write()
    for name in ("protocols/spill.yml", "wards/South.YAML", "polcy.yaml", "kit.yml"):
        library.put(name, "a: 1\n")
    problems = {problem.place.path: problem for problem in library.problems()}
    assert {problem.code for problem in problems.values()} == {"LD-21"}
    assert problems["content/protocols/spill.yml"].hint == "Did you mean 'spill.yaml'?"
    assert problems["content/wards/South.YAML"].hint == "Did you mean 'South.yaml'?"
    assert problems["content/polcy.yaml"].hint == "Did you mean 'policy.yaml'?"
    assert problems["content/kit.yml"].hint == "Did you mean 'kit.yaml'?"


def test_other_files_hidden_files_and_those_of_commands_are_left_alone(library):
    library.write()
    for name in (
        "approvals.yaml",
        "approvals.jsonl",
        "approved/a.json",
        "README.md",
        "protocols/.apron.yaml.swp",
        "protocols/._a.yaml",
        "fonts/a.ttf",
    ):
        library.put(name, b"\xff\xfe not ours")
    assert found(library) == []


def test_protocols_keep_the_order_of_their_file_names(library):
    library.write()
    text = Path("content/protocols/apron.yaml").read_text(encoding="utf-8")
    for name in ("zebra", "beta"):
        code = f"{name[0].upper()}9"
        library.put(
            f"protocols/{name}.yaml",
            text.replace("protocol: apron", f"protocol: {name}").replace("code: P1", f"code: {code}"),
        )
    assert list(library.load().protocols) == ["apron", "beta", "zebra"]


def test_a_link_that_leads_nowhere_is_a_missing_file(library):
    library.write()
    Path("content/protocols/lost.yaml").symlink_to("nowhere.yaml")
    assert found(library) == [("content/protocols/lost.yaml", "LD-1")]
