"""What a body map shows of a person after a step: bare parts, what is worn outermost, and their levels.

Only what can be seen from the front is painted. Levels are told by pattern and shade, never by colour:
clean is blank, reduced is lightly hatched, contaminated is densely cross-hatched and dark.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from math import sqrt

from signage.ground.geometry import Path, Segment
from signage.model.garment import Garment
from signage.pages.rehearsal.body_shapes import ANCHORS, CANVAS, SITE_SHAPES
from signage.rehearse.state.body import HAND_SITES
from signage.rehearse.state.level import Level
from signage.rehearse.trace import PersonState, WornState

OUTLINE = 0.75
"""Width of the line round what is worn, in units of the figure."""

_STOUTER = 0.35
"""By how much each layer makes the figure stouter, in units of the figure."""

_IN_FRONT = frozenset({"trunk", "legs"})
"""What an apron hangs in front of."""


@dataclass(frozen=True, slots=True)
class LevelPattern:
    """Lines at 45 degrees, so that none runs along an arm or a leg: their distance, width and directions.

    Drawn as lines that a shape cuts out, not as a tile that repeats: printers get lines, and small files.
    """

    name: str
    distance: float
    width: float
    directions: int

    @property
    def lines(self) -> Path:
        """The lines over the whole canvas, the first direction falling, the second rising."""
        right, step = CANVAS.right, self.distance * sqrt(2)
        lines: list[Segment] = []
        for index in range(int((right + CANVAS.bottom) / step) + 1 if self.directions else 0):
            start = index * step
            lines += [("M", 0.0, start - right), ("L", right, start)]
            if self.directions > 1:
                lines += [("M", 0.0, start), ("L", right, start - right)]
        return tuple(lines)


PATTERNS: Mapping[Level, LevelPattern] = {
    Level.CLEAN: LevelPattern(Level.CLEAN.word, 1.0, 0.0, 0),
    Level.REDUCED: LevelPattern(Level.REDUCED.word, 2.6, 0.42, 1),
    Level.CONTAMINATED: LevelPattern(Level.CONTAMINATED.word, 1.7, 0.55, 2),
}


@dataclass(frozen=True, slots=True)
class PaintedLayer:
    """Shapes of one garment that can be seen, painted as one. ``level`` is the word of its outside."""

    shapes: tuple[str, ...]
    level: str
    is_barrier: bool
    depth: int

    @property
    def key(self) -> str:
        """A name for the shapes together, so that a page draws them once."""
        return "_".join(self.shapes)

    @property
    def growth(self) -> float:
        """The width of the stroke that makes the shapes stouter."""
        return round(2 * _STOUTER * (self.depth + 1), 2)

    @property
    def outline(self) -> float:
        """The width of the stroke beneath it that stays visible as an outline."""
        line = OUTLINE if self.is_barrier else OUTLINE * 0.6
        return round(self.growth + 2 * line, 2)

    @property
    def halo(self) -> float:
        """The width of the blank stroke beneath the outline, which parts dark layers from one another."""
        return round(self.outline + 0.9, 2)


@dataclass(frozen=True, slots=True)
class BodyMap:
    """One figure. ``exposed`` are the places of marks for exposures; ``bare_hands`` the word of a level."""

    layers: tuple[PaintedLayer, ...]
    bare_hands: tuple[str, str] | None
    soles: str
    exposed: tuple[tuple[float, float], ...]
    is_open: bool


def body_map(state: PersonState, garments: Mapping[str, Garment]) -> BodyMap:
    """The figure of a person. ``garments`` are those of the library."""
    worn = [(each, garments[each.garment]) for each in state.worn if each.garment in garments]
    skin = state.hands[0][1] if state.hands else Level.CLEAN
    bare = tuple(site for site in SITE_SHAPES if site in state.bare and site in HAND_SITES)
    exposed = dict.fromkeys(exposure.site for exposure in state.exposures)
    return BodyMap(
        tuple(_layers(worn)),
        ("_".join(bare), skin.word) if bare and skin else None,
        state.soles.word,
        tuple(ANCHORS[site] for site in exposed if site in ANCHORS),
        any(each.open_fasteners and "trunk" in garment.covers for each, garment in worn),
    )


def shape_keys(maps: Sequence[BodyMap]) -> tuple[str, ...]:
    """All shapes that the figures share, each once."""
    keys = [layer.key for each in maps for layer in each.layers]
    keys += [each.bare_hands[0] for each in maps if each.bare_hands]
    return tuple(dict.fromkeys(keys))


def _layers(worn: Sequence[tuple[WornState, Garment]]) -> Iterator[PaintedLayer]:
    """The garments from the skin outwards; of each what no later garment hides."""
    panels = [_is_panel(garment, worn[:index]) for index, (_own, garment) in enumerate(worn)]
    for index, (state, garment) in enumerate(worn):
        hidden: set[str] = set()
        for (over, _other), hangs_in_front in list(zip(worn, panels, strict=True))[index + 1 :]:
            hidden |= set(over.covers) - (_IN_FRONT if hangs_in_front else frozenset())
        shapes = tuple(_shapes(state, hidden, is_panel=panels[index]))
        depth = sum(1 for under, _other in worn[:index] if set(under.covers) & set(state.covers))
        if shapes:
            yield PaintedLayer(shapes, state.outside.word, garment.barrier, depth)


def _is_panel(garment: Garment, beneath: Sequence[tuple[WornState, Garment]]) -> bool:
    """Whether a garment is drawn as what hangs in front: an apron over what can be seen beside it."""
    covered = {site for state, _garment in beneath for site in state.covers}
    return garment.kind == "apron" and set(garment.covers) >= _IN_FRONT and covered >= _IN_FRONT


def _shapes(worn: WornState, hidden: set[str], *, is_panel: bool) -> Iterator[str]:
    """The shapes of a garment that can be seen."""
    seen = [site for site in SITE_SHAPES if site in worn.covers and site not in hidden]
    if is_panel and _IN_FRONT & set(seen):
        yield "panel"
        seen = [site for site in seen if site not in _IN_FRONT]
    if {"hair", "ears"} <= set(seen):
        seen = [site for site in seen if site not in ("hair", "ears")]
        yield from (site for site in seen if site not in ("eyes", "mouth-nose"))
        yield "hood"
        seen = [site for site in seen if site in ("eyes", "mouth-nose")]
    if {"eyes", "mouth-nose"} <= set(seen):
        seen = [site for site in seen if site not in ("eyes", "mouth-nose")]
        yield "shield"
    yield from ({"eyes": "goggles", "mouth-nose": "cup"}.get(site, site) for site in seen)
