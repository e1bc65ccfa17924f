"""Imports go down only; rooms on one level do not know each other."""

import ast
from pathlib import Path

PACKAGE = Path(__file__).resolve().parents[2] / "signage"
LEVEL = {
    "ground": 0,
    "model": 1,
    "drawing": 1,
    "text": 1,
    "load": 2,
    "rehearse": 2,
    "words": 2,
    "pictograms": 2,
    "compose": 3,
    "impose": 3,
    "paint": 3,
    "pages": 3,
    "check": 4,
    "control": 4,
    "trials": 3,
    "project": 5,
    "produce": 6,
    "cli": 7,
    "__main__": 8,
}


def room_of(module: str) -> str | None:
    parts = module.split(".")
    return parts[1] if parts[0] == "signage" and len(parts) > 1 else None


def imports(path: Path) -> set[str]:
    rooms = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            assert node.level == 0, f"{path}: relative imports hide the room"
            names = [node.module] if node.module != "signage" else [f"signage.{a.name}" for a in node.names]
        rooms |= {room for name in names if (room := room_of(name))}
    return rooms - {"__version__"}


def upward_imports(path: Path) -> list[str]:
    relative = path.relative_to(PACKAGE)
    room = relative.parts[0].removesuffix(".py")
    others = set() if room == "__init__" else imports(path) - {room}
    return [
        f"{relative} (level {LEVEL[room]}) imports {other} ({LEVEL[other]})"
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


def test_files_stay_readable_in_one_sitting():
    lengths = {path: len(path.read_text(encoding="utf-8").splitlines()) for path in PACKAGE.rglob("*.py")}
    assert {str(path.relative_to(PACKAGE)): count for path, count in lengths.items() if count > 400} == {}
