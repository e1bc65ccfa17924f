"""The picture of the rooms. ``python tests/support/rooms_picture.py > docs/rooms.svg`` draws it anew."""

import sys
from itertools import permutations, product

from rooms import LEVEL, arrows, files_of_rooms, nearest

WIDTH, FLOOR, ROOM_HEIGHT, LEFT = 1080, 104, 46, 92
FLOOR_HEIGHT = ROOM_HEIGHT + 16
ROOM_WIDTH = 158
INK, PALE, PAPER, EDGE, BAND = "#14202C", "#AEBBC7", "#FFFFFF", "#5B6B7B", "#F1F4F7"
SAID = {
    "cli": "asks and answers",
    "produce": "runs the jobs",
    "project": "what was loaded",
    "check": "says what is wrong",
    "control": "what may be printed",
    "trials": "what readers said",
    "compose": "decides where",
    "impose": "sheets of paper",
    "paint": "PDF, SVG, PNG",
    "pages": "training site",
    "load": "YAML to model",
    "words": "translations",
    "pictograms": "scenes to marks",
    "rehearse": "walks the steps",
    "model": "what a library is",
    "drawing": "the display list",
    "text": "letters to glyphs",
    "ground": "lengths, files, places",
}


def drawn_rooms():
    """The rooms that are drawn; the module that starts the programme is none."""
    return [room for room in LEVEL if room != "__main__"]


def drawn_arrows():
    """The arrows between them."""
    return {pair for pair in arrows() if "__main__" not in pair}


def _orders(floors, pairs):
    """The rooms of each floor from left to right, floor by floor so that the lines above cross least."""
    placed = {}
    for level in sorted(floors, reverse=True):
        above = [
            (placed[upper], lower) for upper, lower in pairs if LEVEL[lower] == level and upper in placed
        ]
        best = min(
            permutations(sorted(floors[level])),
            key=lambda order: (_crossings(order, above), _distance(order, above), order),
        )
        placed |= {room: _middle(index, len(best)) for index, room in enumerate(best)}
    return placed


def _middle(index, count):
    room = (WIDTH - LEFT) / count
    return LEFT + room * (index + 0.5)


def _ends(order, above):
    at = {room: _middle(index, len(order)) for index, room in enumerate(order)}
    return [(x, at[lower]) for x, lower in above]


def _crossings(order, above):
    ends = _ends(order, above)
    return sum((a - c) * (b - d) < 0 for (a, b), (c, d) in product(ends, ends))


def _distance(order, above):
    return sum(abs(a - b) for a, b in _ends(order, above))


def _ports(room, others, placed, share=0.86):
    """Where on its edge a room meets each of its lines, in the order of their other ends."""
    ordered = sorted(others, key=lambda other: (placed[other], other))
    step = ROOM_WIDTH * share / max(1, len(ordered))
    start = placed[room] - step * (len(ordered) - 1) / 2
    return {other: start + step * index for index, other in enumerate(ordered)}


def rooms_picture():
    """The picture as SVG. Lines that another way implies are pale."""
    rooms, pairs, files = drawn_rooms(), drawn_arrows(), files_of_rooms()
    floors = {}
    for room in rooms:
        floors.setdefault(LEVEL[room], []).append(room)
    dark = nearest(pairs)
    placed = _orders(floors, sorted(dark))
    top = {level: 16 + (max(floors) - level) * FLOOR for level in floors}
    height = top[min(floors)] + ROOM_HEIGHT + 46
    down = {room: _ports(room, [b for a, b in pairs if a == room], placed) for room in rooms}
    up = {room: _ports(room, [a for a, b in pairs if b == room], placed) for room in rooms}
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height}"',
        f'width="{WIDTH}" height="{height}"',
        'font-family="system-ui, sans-serif" role="img" aria-labelledby="title">',
        '<title id="title">The rooms of the programme by level, and which imports from which</title>',
        '<defs><marker id="head" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="7" markerHeight="7"',
        f'orient="auto"><path d="M0 0.8 7.5 4 0 7.2Z" fill="{INK}"/></marker></defs>',
        f'<rect width="{WIDTH}" height="{height}" fill="{PAPER}"/>',
    ]
    for level, at in sorted(top.items()):
        lines += [
            f'<rect x="8" y="{at - 8}" width="{WIDTH - 16}" height="{FLOOR_HEIGHT}" rx="8" fill="{BAND}"/>',
            f'<text x="22" y="{at + 28}" font-size="15" fill="{EDGE}">level {level}</text>',
        ]
    for upper, lower in sorted(pairs, key=lambda pair: (pair in dark, pair)):
        lines.append(_line(upper, lower, down[upper][lower], up[lower][upper], top, (upper, lower) in dark))
    for room in rooms:
        lines.append(_room(room, placed[room], top[LEVEL[room]], files[room]))
    note = "Dark: the next room below. Pale: rooms further down that it uses as well. No line runs up."
    lines += [f'<text x="22" y="{height - 12}" font-size="14" fill="{EDGE}">{note}</text>', "</svg>"]
    return "\n".join(lines) + "\n"


def _line(upper, lower, start, end, top, is_dark):
    y0, y1 = top[LEVEL[upper]] + ROOM_HEIGHT, top[LEVEL[lower]] - 1
    bend = min(60, (y1 - y0) * 0.55)
    path = f"M{start:.1f} {y0}C{start:.1f} {y0 + bend:.1f} {end:.1f} {y1 - bend:.1f} {end:.1f} {y1}"
    look = f'stroke="{INK}" stroke-width="1.6" marker-end="url(#head)"' if is_dark else f'stroke="{PALE}"'
    return f'<path data-from="{upper}" data-to="{lower}" d="{path}" fill="none" {look}/>'


def _room(room, middle, at, files):
    name = "project.py" if room == "project" else f"{room}/"
    count = "" if room == "project" else f" · {files}"
    left = middle - ROOM_WIDTH / 2
    return (
        f'<g data-room="{room}" data-level="{LEVEL[room]}" data-files="{files}">'
        f'<rect x="{left:.1f}" y="{at}" width="{ROOM_WIDTH}" height="{ROOM_HEIGHT}" rx="6" '
        f'fill="{PAPER}" stroke="{EDGE}"/>'
        f'<text x="{middle:.1f}" y="{at + 20}" font-size="16" text-anchor="middle" fill="{INK}">'
        f'<tspan font-weight="700">{name}</tspan>{count}</text>'
        f'<text x="{middle:.1f}" y="{at + 37}" font-size="13" text-anchor="middle" fill="{EDGE}">'
        f"{SAID[room]}</text></g>"
    )


if __name__ == "__main__":
    sys.stdout.write(rooms_picture())
