"""Pictures of steps as SVG: inside a page, or as files that several pages share."""

from __future__ import annotations

from dataclasses import dataclass, field

from markupsafe import Markup, escape

from signage.drawing.marks import Dots
from signage.drawing.svg_path import path_data
from signage.drawing.themes import BAD, GOOD, INK, PAPER, THEMES, TONE
from signage.model.choices import ActionVerb, PhaseTheme
from signage.model.library import Phase, Step
from signage.pages import address
from signage.pictograms.kit.nodes import CANVAS
from signage.pictograms.palette import Palette
from signage.pictograms.picture_set import PictureSet

_DECIMALS = 2
"""Of a unit; the canvas has 96 units, so a phone shows less than a thirtieth of a pixel of the rounding."""


@dataclass(frozen=True, order=True)
class PictureKey:
    """A picture in the colours of a theme; mirrored where travel runs with a right-to-left page."""

    name: str
    theme: PhaseTheme
    is_mirrored: bool = False

    @property
    def file(self) -> str:
        """The file of the site that holds it."""
        mirrored = "-mirrored" if self.is_mirrored else ""
        return f"{address.PICTURES}{self.name}-{self.theme}{mirrored}.svg"


@dataclass(frozen=True, eq=False)
class PagePictures:
    """The pictures of a library as pages show them; each is written out once."""

    picture_set: PictureSet
    _written: dict[PictureKey, str] = field(init=False, default_factory=dict, repr=False)

    def key(self, step: Step, phase: Phase, is_right_to_left: bool) -> PictureKey:
        """The picture of a step as its sheet shows it: steps that clean hands have their own colour."""
        theme = PhaseTheme.HANDS if step.action.verb is ActionVerb.HYGIENE else phase.theme
        is_mirrored = is_right_to_left and self.picture_set.scene(step.picture).mirror == "with-layout"
        return PictureKey(step.picture, theme, is_mirrored)

    def inline(self, key: PictureKey, alternative: str) -> Markup:
        """The picture as an element of a page."""
        return Markup(  # noqa: S704 - numbers and class names of this programme, and an escaped text
            f'<svg class="picture {key.theme}" role="img" aria-label="{escape(alternative)}" '
            f'viewBox="0 0 {CANVAS:g} {CANVAS:g}">{self._paths(key)}</svg>'
        )

    def file(self, key: PictureKey) -> bytes:
        """The picture as a file; pages say what it shows."""
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {CANVAS:g} {CANVAS:g}" '
            f'width="{CANVAS:g}" height="{CANVAS:g}">{self._paths(key)}</svg>\n'
        ).encode()

    def _paths(self, key: PictureKey) -> str:
        """One element a layer; its class names the pigment, so that strong contrast can darken the item."""
        if key not in self._written:
            accent = THEMES[key.theme].accent
            palette = Palette(key.theme, INK, accent, TONE, PAPER, accent, BAD, GOOD)
            elements = []
            for pigment, path in self.picture_set.compiled(key.name, key.is_mirrored):
                fill = palette.fill(pigment)
                assert not isinstance(fill, Dots)
                elements.append(f'<path class="{pigment}" fill="{fill}" d="{path_data(path, _DECIMALS)}"/>')
            self._written[key] = "".join(elements)
        return self._written[key]
