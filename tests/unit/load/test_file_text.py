import os
from pathlib import Path

import pytest

from signage.ground.problem import with_problems
from signage.load.file_text import LARGEST_FILE, read_bytes
from signage.load.yaml.reader import parse_yaml, read_yaml


def problem_of(path):
    node, problems = with_problems(read_yaml(path))
    assert node is None
    (problem,) = problems
    return problem


def test_a_missing_file_is_named_with_the_cure(tmp_path):
    problem = problem_of(tmp_path / "kit.yaml")
    assert (problem.code, problem.place.path) == ("LD-1", f"{tmp_path.as_posix()}/kit.yaml")
    assert "is missing" in problem.message
    assert "signage start" in problem.hint


def test_a_folder_in_place_of_a_file_is_refused(tmp_path):
    (tmp_path / "kit.yaml").mkdir()
    assert "is a folder" in problem_of(tmp_path / "kit.yaml").message


def test_a_pipe_is_refused_without_waiting_for_it(tmp_path):
    os.mkfifo(tmp_path / "kit.yaml")
    assert "not an ordinary file" in problem_of(tmp_path / "kit.yaml").message


def test_a_file_that_may_not_be_read_is_named(tmp_path, monkeypatch):
    path = tmp_path / "kit.yaml"
    path.write_text("a: 1\n")

    def refuse(*_args, **_more):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    problem = problem_of(path)
    assert problem.code == "LD-1"
    assert "may not be read" in problem.message


def test_a_name_with_a_nul_character_is_a_problem_and_no_crash():
    assert problem_of(Path("a\0b.yaml")).code == "LD-1"


def test_a_large_file_is_refused_before_it_is_read(tmp_path, monkeypatch):
    path = tmp_path / "kit.yaml"
    with path.open("wb") as stream:
        stream.truncate(50_000_000)
    monkeypatch.setattr(Path, "open", lambda *_: pytest.fail("the file was opened"))
    problem = problem_of(path)
    assert problem.code == "LD-2"
    assert "50.0 MB" in problem.message


def test_a_file_of_the_largest_size_is_read(tmp_path):
    path = tmp_path / "kit.yaml"
    path.write_bytes(b"a: 1\n".ljust(LARGEST_FILE, b"\n"))
    data, problems = with_problems(read_bytes(path))
    assert (len(data), problems) == (LARGEST_FILE, ())
    assert with_problems(read_yaml(path))[1] == ()


@pytest.mark.parametrize(
    ("data", "place", "offset", "byte"),
    [
        # Ill-formed sequences of the Unicode Standard 15.0, section 3.9, table 3-7 and D92.
        (b"a: \xc0\xaf\n", (1, 4), 3, "0xC0"),
        (b"a: 1\nb: \xe0\x9f\x80\n", (2, 4), 8, "0xE0"),
        (b"a: 1\r\nb: \xed\xa0\x80\n", (2, 4), 9, "0xED"),
        ("é: ".encode() + b"\xf4\x91\x92\x93\n", (1, 4), 4, "0xF4"),
        (b"a: \x80\n", (1, 4), 3, "0x80"),
        (b"a: 1\n\xff", (2, 1), 5, "0xFF"),
    ],
)
def test_ill_formed_utf_8_is_reported_with_line_column_and_byte_offset(data, place, offset, byte):
    node, (problem,) = with_problems(parse_yaml(data, "kit.yaml"))
    assert node is None
    assert (problem.code, (problem.place.line, problem.place.column)) == ("LD-3", place)
    assert f"the byte {byte} at offset {offset} (line {place[0]})" in problem.message
    assert problem.hint == "Save the file as UTF-8 without BOM."


def test_utf_16_is_recognised():
    _, (problem,) = with_problems(parse_yaml("a: 1\n".encode("utf-16"), "kit.yaml"))
    assert "looks like UTF-16" in problem.message


def test_a_byte_order_mark_is_refused_with_its_cure_and_the_rest_is_read():
    node, (problem,) = with_problems(parse_yaml(b"\xef\xbb\xbfa: 1\n", "kit.yaml"))
    assert (problem.code, problem.hint) == ("LD-4", "Save the file as UTF-8 without BOM.")
    assert node.values["a"].text == "1"


@pytest.mark.parametrize("character", "\u202a\u202b\u202c\u202d\u202e")
def test_direction_overrides_and_embeddings_are_named(character):
    # The explicit formatting characters of UAX #9, table 1, other than the isolates.
    _, (problem,) = with_problems(parse_yaml(f"a: x{character}\n".encode(), "kit.yaml"))
    assert problem.code == "LD-5"
    assert f"the direction override U+{ord(character):04X}" in problem.message


def test_a_binary_file_gives_few_problems():
    _, problems = with_problems(parse_yaml(bytes(range(32)) * 50, "kit.yaml"))
    assert 1 <= len(problems) <= 10
    assert "more follow" in problems[-1].message


def test_tabs_are_reported_once_with_the_number_of_further_lines():
    _, (problem,) = with_problems(parse_yaml(b"a:\n\tb: 1\n\tc: 2\n\t\td: 3\n", "kit.yaml"))
    assert (problem.place.line, problem.place.column) == (2, 1)
    assert "2 further lines" in problem.message
    assert "spaces" in problem.hint
