"""Pictures of steps as SVG: inside a page, or as files that several pages share."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from markupsafe import Markup, escape

from signage.drawing.marks import Dots
from signage.drawing.svg_path import path_data
from signage.drawing.themes import BAD, CARE, GOOD, INK, PAPER, THEMES, TONE
from signage.model.library import Phase, Step
from signage.pages import address
from signage.pictograms.kit.nodes import CANVAS
from signage.pictograms.palette import Palette
from signage.pictograms.picture import compiled_scene
from signage.pictograms.scenes import scene_of

_DECIMALS = 2
"""Of a unit; the canvas has 96 units, so a phone shows less than a thirtieth of a pixel of the rounding."""


@dataclass(frozen=True, order=True)
class PictureKey:
    """A picture in the colours of a theme; mirrored where travel runs with a right-to-left page."""

    name: str
    theme: str
    is_mirrored: bool = False

    @property
    def file(self) -> str:
        """The file of the site that holds it."""
        mirrored = "-mirrored" if self.is_mirrored else ""
        return f"{address.PICTURES}{self.name}-{self.theme}{mirrored}.svg"


def picture_key(step: Step, phase: Phase, is_right_to_left: bool) -> PictureKey:
    """The picture of a step as its sheet shows it: steps that clean hands have their own colour."""
    theme = CARE.name if step.action.verb == "hygiene" else phase.theme
    is_mirrored = is_right_to_left and scene_of(step.picture).mirror == "with-layout"
    return PictureKey(step.picture, theme, is_mirrored)


def inline_picture(key: PictureKey, alternative: str) -> Markup:
    """The picture as an element of a page."""
    return Markup(  # noqa: S704 - numbers and class names of this programme, and an escaped text
        f'<svg class="picture {key.theme}" role="img" aria-label="{escape(alternative)}" '
        f'viewBox="0 0 {CANVAS:g} {CANVAS:g}">{_paths(key)}</svg>'
    )


def picture_file(key: PictureKey) -> bytes:
    """The picture as a file; pages say what it shows."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {CANVAS:g} {CANVAS:g}" '
        f'width="{CANVAS:g}" height="{CANVAS:g}">{_paths(key)}</svg>\n'
    ).encode()


@lru_cache(maxsize=256)
def _paths(key: PictureKey) -> str:
    """One element a layer; its class names the pigment, so that strong contrast can darken the item."""
    accent = THEMES[key.theme].accent
    palette = Palette(key.theme, INK, accent, TONE, PAPER, accent, BAD, GOOD)
    elements = []
    for pigment, path in compiled_scene(key.name, key.is_mirrored):
        fill = palette.fill(pigment)
        assert not isinstance(fill, Dots)
        elements.append(f'<path class="{pigment}" fill="{fill}" d="{path_data(path, _DECIMALS)}"/>')
    return "".join(elements)
