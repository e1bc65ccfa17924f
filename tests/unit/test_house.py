"""Imports go down only; rooms on one level do not know each other; the picture shows the house as it is."""

import ast
import re
from pathlib import Path

from rooms import LEVEL, PACKAGE, files_of_rooms, room_of, rooms_used_by
from rooms_picture import SAID, drawn_arrows, drawn_rooms, rooms_picture

PICTURE = PACKAGE.parent / "docs" / "rooms.svg"
DRAW_ANEW = "draw it anew: python tests/support/rooms_picture.py > docs/rooms.svg"


def upward_imports(path: Path) -> list[str]:
    room = room_of(path)
    others = set() if room == "__init__" else rooms_used_by(path) - {room}
    return [
        f"{path.relative_to(PACKAGE)} (level {LEVEL[room]}) imports {other} ({LEVEL[other]})"
        for other in sorted(others)
        if LEVEL[other] >= LEVEL[room]
    ]


def test_imports_go_down_only():
    assert [fault for path in sorted(PACKAGE.rglob("*.py")) for fault in upward_imports(path)] == []


def test_every_room_has_a_level():
    rooms = {p.name.removesuffix(".py") for p in PACKAGE.iterdir() if p.name[0] not in "._"} - {"__init__"}
    assert rooms <= set(LEVEL)


def test_every_room_names_its_level_first():
    """A reader who opens a room learns where it stands."""
    said = {
        room.name: ast.get_docstring(ast.parse(file.read_text(encoding="utf-8"))) or ""
        for room in PACKAGE.iterdir()
        if (file := room / "__init__.py").is_file()
    }
    assert [room for room, text in said.items() if not text.startswith(f"Level {LEVEL[room]}: ")] == []


def test_the_picture_shows_the_rooms_their_levels_and_every_arrow():
    assert set(SAID) == set(drawn_rooms())
    for picture in (rooms_picture(), PICTURE.read_text(encoding="utf-8")):
        rooms = re.findall(r'data-room="(\w+)" data-level="(\d+)" data-files="(\d+)"', picture)
        levels = {room: int(level) for room, level, _files in rooms}
        assert levels == {room: LEVEL[room] for room in drawn_rooms()}, DRAW_ANEW
        assert set(re.findall(r'data-from="(\w+)" data-to="(\w+)"', picture)) == drawn_arrows(), DRAW_ANEW
        now = files_of_rooms()
        assert [room for room, _level, files in rooms if abs(now[room] - int(files)) > 5] == [], DRAW_ANEW


def test_files_stay_readable_in_one_sitting():
    lengths = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in PACKAGE.rglob("*.py")}
    assert {str(path.relative_to(PACKAGE)): count for path, count in lengths.items() if count > 400} == {}


def lists_to_fill(path: Path) -> list[str]:
    return [
        f"{path.relative_to(PACKAGE)}:{node.lineno} {node.arg}"
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.arg)
        and node.annotation is not None
        and ast.unparse(node.annotation).startswith(("list[Problem]", "list[Finding]"))
    ]


def test_problems_are_yielded_and_never_put_into_a_list_of_the_caller():
    assert [each for path in sorted(PACKAGE.rglob("*.py")) for each in lists_to_fill(path)] == []
