"""The rooms of the house as its source has them: level, files, and which room imports which."""

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


def room_of(path):
    """The room of a file of the package."""
    return path.relative_to(PACKAGE).parts[0].removesuffix(".py")


def files_of_rooms():
    """How many files each room has."""
    rooms = [room_of(path) for path in PACKAGE.rglob("*.py")]
    return {room: rooms.count(room) for room in LEVEL}


def rooms_used_by(path):
    """The rooms that a file imports from, its own among them."""
    rooms = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            assert node.level == 0, f"{path}: relative imports hide the room"
            names = [node.module] if node.module != "signage" else [f"signage.{a.name}" for a in node.names]
        parts = [name.split(".") for name in names]
        rooms |= {part[1] for part in parts if part[0] == "signage" and len(part) > 1}
    return rooms - {"__version__"}


def arrows():
    """Pairs of rooms: the first imports from the second."""
    found = set()
    for path in PACKAGE.rglob("*.py"):
        room = room_of(path)
        if room != "__init__":
            found |= {(room, other) for other in rooms_used_by(path) - {room}}
    return found


def nearest(pairs):
    """The arrows that no other way through the house implies."""
    below = {}
    for upper, lower in pairs:
        below.setdefault(upper, set()).add(lower)

    def reached(room):
        return set().union(*({lower} | reached(lower) for lower in below.get(room, ())))

    return {
        (upper, lower)
        for upper, lower in pairs
        if not any(lower in reached(other) for other in below[upper] - {lower})
    }
