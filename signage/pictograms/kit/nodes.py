"""What a scene is built of: lines and fills, blobs, and groups that move, crop and name them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from signage.ground.geometry import IDENTITY, Affine, Box, Path, mirroring, rectangle, transform_path
from signage.pictograms.kit.paths import Point, line

CANVAS = 96.0
"""Side of a pictogram in its units."""

OUTLINE = 2.8
"""Width of the outline of large shapes: 0.44 mm on a picture of 15 mm."""

SMALL_OUTLINE = 2.2
"""Width of the outline of small shapes: hands of a figure, goggles, shoes."""

DETAIL = 2.4
"""Width of a line inside a shape."""

GAP = 2.4
"""Width of the gap that parts two things of like lightness."""

Pigment = Literal["ink", "accent", "tone", "paper", "mark", "bad", "good", "ground"]
"""A meaning that a palette turns into a fill. ``ground`` is no colour: it cuts holes and gaps."""

CompiledLayer = tuple[Pigment, Path]
"""A pigment and its filled path (non-zero rule), in the units of a pictogram."""

Style = Literal["ink", "accent", "tone", "paper", "mark", "bad", "good", "ground", "lining"]
"""How a blob is filled: with a pigment, or as the inside of a garment (paper with slanted stripes)."""

ITEM = "item"
"""Role of everything that belongs to the focus of a scene."""

_OUTLINED: frozenset[str] = frozenset({"accent", "tone", "paper", "lining"})
_PARTED: frozenset[str] = frozenset({"ink", "mark", "bad", "good"})

STRIPE_PITCH = 5.4
STRIPE_WIDTH = 2.4
"""Slanted stripes of a lining: their distance across and their width."""


@dataclass(frozen=True, slots=True)
class Member:
    """A piece of a blob: a closed outline, or with a width a round-ended stroke."""

    path: Path
    width: float = 0.0


@dataclass(frozen=True, slots=True)
class Operation:
    """One pass of paint. ``width`` > 0 strokes, ``is_filled`` fills; both grow a closed outline.

    ``within`` are shapes that all cut the paint; each is a set of members that count as one shape.
    """

    path: Path
    pigment: Pigment
    width: float = 0.0
    is_filled: bool = True
    has_butt_caps: bool = False
    role: str = ""
    within: tuple[tuple[Member, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Blob:
    """Members that melt into one silhouette: a halo is cut, then the outline, then the fill.

    ``outline`` and ``halo`` are widths outside the members; None takes the habit of the style: things
    of colour have an outline and no halo, flat things a halo and no outline. They are never scaled.
    ``only`` limits the passes.
    """

    style: Style
    members: tuple[Member, ...]
    outline: float | None = None
    halo: float | None = None
    only: Literal["all", "fill", "outline"] = "all"
    role: str = ""


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line of one pigment."""

    path: Path
    width: float = DETAIL
    pigment: Pigment = "ink"
    has_butt_caps: bool = False
    role: str = ""


@dataclass(frozen=True, slots=True)
class Patch:
    """A flat filled shape of one pigment without outline or halo."""

    path: Path
    pigment: Pigment = "ink"
    role: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Nodes that move together.

    ``crop`` and ``within`` limit what the children paint, in the units of the children. ``upright``
    is an x, in the units of the parent, about which the group turns back when the scene is mirrored.
    """

    children: tuple[Node, ...]
    transform: Affine = IDENTITY
    role: str = ""
    crop: Box | None = None
    within: tuple[Member, ...] = ()
    upright: float | None = None


Node = Blob | Stroke | Patch | Group


@dataclass(frozen=True, slots=True)
class _Context:
    transform: Affine = IDENTITY
    role: str = ""
    within: tuple[tuple[Member, ...], ...] = field(default=())

    def name(self, role: str) -> str:
        """The role of a node here: everything in the item is item, whatever its part calls it."""
        return self.role if self.role == ITEM else role or self.role


def closed(*paths: Path) -> tuple[Member, ...]:
    """Closed outlines as members of a blob."""
    return tuple(Member(path) for path in paths)


def stroked(width: float, *paths: Path) -> tuple[Member, ...]:
    """Round-ended strokes of one width as members of a blob."""
    return tuple(Member(path, width) for path in paths)


def group(*children: Node, transform: Affine = IDENTITY, role: str = "") -> Group:
    """A group from its children."""
    return Group(tuple(children), transform, role)


def outline_of(style: Style, outline: float | None = None) -> float:
    """The width of the outline of a style, unless one is given."""
    if outline is not None:
        return outline
    return OUTLINE if style in _OUTLINED else 0.0


def flatten(nodes: Sequence[Node] | Node) -> Iterator[Operation]:
    """The operations of a scene in painting order."""
    yield from _flatten(nodes if isinstance(nodes, Sequence) else (nodes,), _Context())


def _flatten(nodes: Sequence[Node], context: _Context) -> Iterator[Operation]:
    for node in nodes:
        if isinstance(node, Group):
            yield from _flatten(node.children, _inside(node, context))
        elif isinstance(node, Blob):
            yield from _paint_blob(node, context)
        else:
            yield from _paint_line_or_patch(node, context)


def _inside(node: Group, context: _Context) -> _Context:
    base = context.transform
    if node.upright is not None and base.mirrors:
        base = base @ mirroring(node.upright)
    transform = base @ node.transform
    within = context.within
    if node.crop is not None:
        within = (*within, closed(transform_path(rectangle(node.crop), transform)))
    if node.within:
        within = (*within, _moved(node.within, transform))
    return _Context(transform, context.name(node.role), within)


def _moved(members: Sequence[Member], transform: Affine) -> tuple[Member, ...]:
    return tuple(
        Member(transform_path(member.path, transform), member.width * transform.scale) for member in members
    )


def _paint_line_or_patch(node: Stroke | Patch, context: _Context) -> Iterator[Operation]:
    path = transform_path(node.path, context.transform)
    role = context.name(node.role)
    if isinstance(node, Patch):
        yield Operation(path, node.pigment, role=role, within=context.within)
    else:
        yield Operation(
            path,
            node.pigment,
            width=node.width,
            is_filled=False,
            has_butt_caps=node.has_butt_caps,
            role=role,
            within=context.within,
        )


def _paint_blob(blob: Blob, context: _Context) -> Iterator[Operation]:
    outline = outline_of(blob.style, blob.outline)
    halo = blob.halo if blob.halo is not None else (GAP if blob.style in _PARTED else 0.0)
    members = _moved(blob.members, context.transform)
    role = context.name(blob.role) or blob.style

    def grown(pigment: Pigment, growth: float, name: str) -> Iterator[Operation]:
        for member in members:
            yield Operation(
                member.path,
                pigment,
                width=member.width + 2 * growth,
                is_filled=not member.width,
                role=name,
                within=context.within,
            )

    if halo and blob.only == "all":
        yield from grown("ground", outline + halo, "halo")
    if outline and blob.only != "fill":
        yield from grown("ink", outline, f"{role}.outline")
    if blob.only == "outline":
        return
    if blob.style != "lining":
        yield from grown(blob.style, 0.0, role)
        return
    yield from grown("paper", 0.0, role)
    within = (*context.within, members)
    for stripe in _stripes():
        yield replace(stripe, role=f"{role}.lining", within=within)


def _stripes() -> Iterator[Operation]:
    count = int(2 * CANVAS / STRIPE_PITCH) + 6
    for index in range(count):
        x = index * STRIPE_PITCH * 1.4142 - 10
        ends: tuple[Point, Point] = ((x, -10.0), (x - CANVAS - 20, CANVAS + 10))
        yield Operation(line(*ends), "mark", width=STRIPE_WIDTH, is_filled=False, has_butt_caps=True)
