"""Path marks to content operators (ISO 32000-1, section 8.5), with the graphics state kept in mind."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from itertools import chain

from signage.drawing.marks import Dots, PathMark
from signage.ground.geometry import Affine, Path
from signage.paint.pdf import syntax

_ROUND = 1
_BUTT = 0

_LONG = 500
"""Segments of a path that is worth remembering."""

_WHOLE = "_"
"""Stands for the end of a whole number while noughts are taken away; no operator has it."""


@dataclass(slots=True)
class _GraphicsState:
    """What the file has set so far; an empty string or -1 stands for unknown."""

    fill: str = ""
    stroke: str = ""
    width: float = -1.0
    dash: tuple[float, ...] | None = None
    cap: int = -1
    join: int = -1
    font: tuple[str, float] | None = None


class OperatorList:
    """Operators of one content stream. ``pattern_name`` finds or makes the tiling pattern of a dot fill."""

    def __init__(self, pattern_name: Callable[[Dots], str], decimals: int = 3) -> None:
        self.code: list[str] = []
        self._pattern_name = pattern_name
        self._decimals = decimals
        self._state = _GraphicsState()
        self._saved: list[_GraphicsState] = []

    def save(self, transform: Affine | None = None) -> None:
        """Keep the graphics state, then change the coordinates."""
        self._saved.append(replace(self._state))
        self.code.append("q")
        if transform is not None:
            self.code.append(f"{syntax.matrix(transform)} cm")

    def restore(self) -> None:
        """Go back to the state and the coordinates that were kept."""
        self._state = self._saved.pop()
        self.code.append("Q")

    def clip(self, path: Path) -> None:
        """Cut all that follows to the inside of a path."""
        self.code.extend((path_operators(path, self._decimals), "W n"))

    def set_fill(self, colour: str) -> None:
        """The colour of fills and of text."""
        if self._state.fill != colour:
            self._state.fill = colour
            self.code.append(f"{syntax.colour_numbers(colour)} rg")

    def set_font(self, font: str, size: float) -> None:
        """Font resource and size, inside a text object."""
        if self._state.font != (font, size):
            self._state.font = (font, size)
            self.code.append(f"/{font} {syntax.number(size, 4)} Tf")

    def paint(self, mark: PathMark) -> None:
        """Fill and stroke a path."""
        path = path_operators(mark.path, self._decimals)
        if mark.stroke is not None and mark.width > 0:
            self._set_stroke(mark)
            is_stroked = True
        else:
            is_stroked = False
        if isinstance(mark.fill, Dots):
            self._fill_with_dots(path, mark.fill)
            if is_stroked:
                self.code.extend((path, "S"))
        elif mark.fill is not None:
            self.set_fill(mark.fill)
            self.code.extend((path, "B" if is_stroked else "f"))
        elif is_stroked:
            self.code.extend((path, "S"))

    def _fill_with_dots(self, path: str, dots: Dots) -> None:
        """Paper first, then whole dots over it: a tile with its own ground shows seams at its edges."""
        self.set_fill(dots.paper)
        self.code.extend((path, "f", f"/Pattern cs /{self._pattern_name(dots)} scn", path, "f"))
        self._state.fill = ""

    def _set_stroke(self, mark: PathMark) -> None:
        state, code = self._state, self.code
        if mark.stroke is not None and state.stroke != mark.stroke:
            state.stroke = mark.stroke
            code.append(f"{syntax.colour_numbers(mark.stroke)} RG")
        if state.width != mark.width:
            state.width = mark.width
            code.append(f"{syntax.number(mark.width)} w")
        if state.dash != mark.dash:
            state.dash = mark.dash
            code.append(f"[{syntax.numbers(mark.dash)}] 0 d")
        cap = _BUTT if mark.butt_caps else _ROUND
        if state.cap != cap:
            state.cap = cap
            code.append(f"{cap} J")
        if state.join != _ROUND:
            state.join = _ROUND
            code.append(f"{_ROUND} j")


def path_operators(path: Path, decimals: int = 3) -> str:
    """The path construction operators; an upright rectangle becomes one ``re``."""
    box = _upright_rectangle(path)
    if box is not None:
        return f"{syntax.numbers(box, decimals)} re"
    return _long_path(path, decimals) if len(path) > _LONG else _path(path, decimals)


def _path(path: Path, decimals: int) -> str:
    kinds = tuple([segment[0] for segment in path])
    values = chain.from_iterable([segment[1:] for segment in path])
    return _without_superfluous_zeros(_template(kinds, decimals) % tuple(values), decimals)


_long_path = lru_cache(maxsize=64)(_path)
"""Codes: cards show them on two papers alike, and comparing one with itself costs nothing."""


def _without_superfluous_zeros(text: str, decimals: int) -> str:
    """Numbers with ``decimals`` and a blank behind each, in their shortest notation.

    Whole numbers go first and are marked until the end, so that their own noughts stay.
    """
    text = text.replace(f".{'0' * decimals} ", _WHOLE)
    for count in range(decimals - 1, 0, -1):
        text = text.replace(f"{'0' * count} ", " ")
    return text.replace(_WHOLE, " ")


@lru_cache(maxsize=256)
def _template(kinds: tuple[str | float, ...], decimals: int) -> str:
    """The notation of a path with its segments: formatting it at once is three times as fast."""
    templates = _segment_templates(decimals)
    return " ".join([templates[kind] for kind in kinds])


@cache
def _segment_templates(decimals: int) -> dict[str | float, str]:
    """The notation of each kind of segment."""
    number = f"%.{decimals}f"
    return {"M": f"{number} {number} m", "L": f"{number} {number} l", "C": f"{number} " * 6 + "c", "Z": "h"}


def _upright_rectangle(path: Path) -> tuple[float, float, float, float] | None:
    """x, y, width, height if the path runs as ``re`` would: along x first, so that holes stay holes."""
    if len(path) != 5 or [segment[0] for segment in path] != ["M", "L", "L", "L", "Z"]:
        return None
    (left, top), (right, second), (third, bottom), (fourth, fifth) = (
        (float(segment[1]), float(segment[2])) for segment in path[:4]
    )
    if second == top and third == right and fourth == left and fifth == bottom:
        return left, top, right - left, bottom - top
    return None
