"""The marks of a display list. Lengths in millimetres from the left top corner, y downwards.

Colours are ``#RRGGBB``: theme and copier decisions have been made before a mark exists.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from enum import StrEnum
from functools import cached_property
from typing import Literal

from signage.drawing.roles import GroupRole, TypeRole
from signage.ground.geometry import IDENTITY, Affine, Box, Path, path_box
from signage.ground.glyphs import GlyphRun


@dataclass(frozen=True, slots=True)
class Dots:
    """A fill of round dots on paper, in the units of the mark that carries it.

    Rows lie ``pitch_y`` apart; every second row is shifted by half of ``pitch_x``.
    """

    radius: float
    pitch_x: float
    pitch_y: float
    colour: str
    paper: str = "#FFFFFF"


Fill = str | Dots


@dataclass(frozen=True, slots=True)
class PathMark:
    """A filled or stroked path. Joins and caps are round; fills follow the non-zero rule."""

    path: Path
    fill: Fill | None = None
    stroke: str | None = None
    width: float = 0.0
    dash: tuple[float, ...] = ()
    butt_caps: bool = False


@dataclass(frozen=True, slots=True)
class PlacedLine:
    """One line of shaped text: its runs in visual order, and where its first glyph stands.

    ``x`` is the left end and ``baseline`` the y of the line before the mark's rotation.
    ``start`` and ``end`` delimit the characters of the paragraph that the line holds.
    """

    runs: tuple[GlyphRun, ...]
    x: float
    baseline: float
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class TextMark:
    """Shaped lines of one paragraph.

    ``size`` is the em in millimetres. ``box`` bounds the ink (already rotated). ``role`` is the type
    role of the design system (``headline``, ``detail`` …), ``points`` the nominal size that was
    chosen and ``wanted_points`` the size that the role asked for before the fit ladder.
    ``rotation`` turns the whole mark clockwise by degrees about ``pivot``.
    """

    text: str
    language: str
    is_right_to_left: bool
    lines: tuple[PlacedLine, ...]
    size: float
    colour: str
    role: TypeRole
    weight: int
    points: float
    wanted_points: float
    box: Box
    message: str | None = None
    rotation: float = 0.0
    pivot: tuple[float, float] = (0.0, 0.0)

    def __post_init__(self) -> None:
        """Refuse a role that no text has: ValueError."""
        object.__setattr__(self, "role", TypeRole(self.role))


class Structure(StrEnum):
    """What a group is in the reading structure of the document (names of ISO 32000 structure types)."""

    SECTION = "Sect"
    HEADING_1 = "H1"
    HEADING_2 = "H2"
    PARAGRAPH = "P"
    LIST = "L"
    ITEM = "LI"
    LABEL = "Lbl"
    BODY = "LBody"
    FIGURE = "Figure"
    ARTEFACT = "Artifact"


@dataclass(frozen=True, slots=True)
class Form:
    """A drawing that is used again and again: painted once a document, placed many times.

    ``key`` names it uniquely within a document; equal keys mean equal marks. ``size`` is the side
    of its square in its own units.
    """

    key: str
    size: float
    marks: tuple[PathMark, ...]


@dataclass(frozen=True, slots=True)
class FormMark:
    """A form placed by an affine map from its units to the units of its parent."""

    form: Form
    transform: Affine


@dataclass(frozen=True, slots=True)
class Group:
    """Marks that belong together.

    ``structure`` is None for a group without meaning for readers of the structure: its children
    count for its parent. ``alternative`` is the text of a figure. ``role`` and ``name`` tell rules
    what it is (``step`` and ``apron-off``; ``zone`` and ``dirty-side``; ``qr`` and the payload).
    ``box`` bounds it in the units of its own marks.
    ``facts`` are numbers and words for rules, such as the number of a step.
    """

    marks: tuple[Mark, ...]
    role: GroupRole = GroupRole.NONE
    name: str = ""
    structure: Structure | None = None
    alternative: str | None = None
    language: str | None = None
    box: Box | None = None
    transform: Affine = IDENTITY
    clip: Path | None = None
    facts: tuple[tuple[str, str | float | int | bool], ...] = field(default=())

    def __post_init__(self) -> None:
        """Refuse a role that no group has: ValueError."""
        object.__setattr__(self, "role", GroupRole(self.role))

    def fact(self, key: str) -> str | float | int | bool | None:
        """A recorded fact, or None."""
        return dict(self.facts).get(key)


Mark = PathMark | TextMark | FormMark | Group


@dataclass(frozen=True)
class Page:
    """One page: its trimmed size, and its marks in painting order, which is reading order too."""

    width: float
    height: float
    marks: tuple[Mark, ...]
    margin: float = 0.0

    @cached_property
    def placed(self) -> tuple[tuple[Mark, Affine], ...]:
        """Every mark with the map from its units to the page, as ``walk`` gives them; twenty rules ask."""
        return tuple(walk(self.marks))

    @cached_property
    def painted(self) -> tuple[tuple[TextMark | PathMark, Affine, Box], ...]:
        """Texts and paths in painting order, each with its ink box, or that of its outline, on the page."""
        return tuple(
            (mark, transform, transform.box(mark.box if isinstance(mark, TextMark) else path_box(mark.path)))
            for mark, transform in self.placed
            if isinstance(mark, TextMark | PathMark)
        )

    @cached_property
    def texts(self) -> tuple[tuple[TextMark, Box], ...]:
        """The text marks, each with its ink box on the page."""
        return tuple(
            (mark, transform.box(mark.box)) for mark, transform in self.placed if isinstance(mark, TextMark)
        )


@dataclass(frozen=True, slots=True)
class FitStep:
    """A rung of the fit ladder that was taken: role, what was done, from and to."""

    role: TypeRole
    rung: str
    before: float
    after: float


@dataclass(frozen=True, slots=True)
class Overflow:
    """Text that did not fit at its floor: the end of the ladder."""

    role: TypeRole | Literal[GroupRole.PICTURE]
    message: str | None
    text: str
    excess_mm: float


@dataclass(frozen=True, slots=True)
class Sheet:
    """A finished document to paint: pages with all that a file name, a title and a rule need.

    ``mark`` is what it is printed as: none, demonstration, draft or proof.
    """

    kind: str
    protocol: str
    locale: str
    title: str
    paper: str
    revision: str
    is_right_to_left: bool
    pages: tuple[Page, ...]
    file_stem: str
    phase: str = ""
    step: str = ""
    mark: str = "draft"
    fit: tuple[FitStep, ...] = ()
    overflows: tuple[Overflow, ...] = ()

    @property
    def has_state(self) -> bool:
        """Whether it must say what it is: a draft, a proof or a demonstration."""
        return self.mark != "none"


def walk(marks: tuple[Mark, ...], transform: Affine = IDENTITY) -> Iterator[tuple[Mark, Affine]]:
    """Every mark in painting order with the map from its units to the page; groups come before members."""
    found: list[tuple[Mark, Affine]] = []
    _gather(found, marks, transform)
    return iter(found)


def _gather(found: list[tuple[Mark, Affine]], marks: tuple[Mark, ...], transform: Affine) -> None:
    """Into a list, since a generator within a generator for each depth of groups takes five times as long."""
    for mark in marks:
        found.append((mark, transform))
        if isinstance(mark, Group):
            inner = transform if mark.transform is IDENTITY else transform @ mark.transform
            _gather(found, mark.marks, inner)


def groups_of(page: Page, role: GroupRole) -> list[tuple[Group, Box]]:
    """The groups with a role, each with its box on the page; ValueError for a role that no group has."""
    wanted = GroupRole(role)
    found: list[tuple[Group, Box]] = []
    for mark, transform in page.placed:
        if isinstance(mark, Group) and mark.role is wanted and mark.box is not None:
            found.append((mark, (transform @ mark.transform).box(mark.box)))
    return found


def texts_of(page: Page, keep: Callable[[TextMark], bool] = lambda _mark: True) -> list[tuple[TextMark, Box]]:
    """The text marks, each with its ink box on the page."""
    return [(mark, box) for mark, box in page.texts if keep(mark)]
