"""All pictures side by side on one page, to look at them together."""

from __future__ import annotations

import math
from collections.abc import Sequence

from signage.drawing.marks import FormMark, Group, Mark, Page, PathMark
from signage.drawing.roles import GroupRole
from signage.ground.geometry import Box, rectangle, scaling, translation
from signage.pictograms.palette import PALETTES, Palette
from signage.pictograms.picture_set import PictureSet


def contact_page(
    pictures: PictureSet,
    names: Sequence[str],
    palette: Palette | None = None,
    *,
    side: float = 30.0,
    columns: int = 6,
    gap: float = 3.0,
    mirrored: bool = False,
    tile: str = "#FFFFFF",
    wall: str = "#E9ECEF",
) -> Page:
    """Pictures in a grid, in millimetres; without a palette each in the colours of its theme."""
    rows = math.ceil(len(names) / columns)
    width, height = columns * (side + gap) + gap, rows * (side + gap) + gap
    marks: list[Mark] = [PathMark(rectangle(Box(0, 0, width, height)), fill=wall)]
    for index, name in enumerate(names):
        x = gap + index % columns * (side + gap)
        y = gap + index // columns * (side + gap)
        form = pictures.form(name, palette or PALETTES[pictures.scene(name).theme], mirrored)
        placed = translation(x, y) @ scaling(side / form.size)
        marks.append(PathMark(rectangle(Box(x, y, side, side)), fill=tile))
        box = Box(x, y, side, side)
        marks.append(Group((FormMark(form, placed),), role=GroupRole.PICTURE, name=name, box=box))
    return Page(width, height, tuple(marks))
