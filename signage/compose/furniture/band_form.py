"""The form of a head band: putting on is filled, taking off an open frame, hands stand on a foot."""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose.canvas import Canvas
from signage.compose.theme import Band, Style

_HEAD_CORNERS = (True, True, False, False)


@dataclass(frozen=True)
class BandForm:
    """Measures of a band in millimetres: corners of each form, the line of a frame, the height of a foot.

    ``is_plate``: it stands on what is below it, so that only its upper corners are round.
    """

    radius: float
    frame_radius: float
    tint_radius: float
    frame: float
    foot: float
    is_plate: bool = False

    def scaled(self, scale: float) -> BandForm:
        """All measures times ``scale``."""
        return BandForm(
            self.radius * scale,
            self.frame_radius * scale,
            self.tint_radius * scale,
            self.frame * scale,
            self.foot * scale,
            self.is_plate,
        )


def draw_band_form(
    canvas: Canvas, style: Style, place: tuple[float, float, float, float], form: BandForm
) -> str:
    """The ground of a band at x, y, width and height; returns the colour of words on it."""
    x, y, width, height = place
    corners = _HEAD_CORNERS if form.is_plate else (True,) * 4
    if style.theme.band is Band.FILLED:
        canvas.rect(x, y, width, height, style.deep, radius=form.radius, corners=corners)
        return style.paper
    if style.theme.band is Band.OPEN:
        inset = 0.0 if form.is_plate else form.frame / 2
        frame = (x + form.frame / 2, y + inset, width - form.frame, height - 2 * inset)
        canvas.rect(*frame, style.paper, style.deep, form.frame, form.frame_radius, corners)
    else:
        canvas.rect(x, y, width, height, style.tint, radius=form.tint_radius, corners=_HEAD_CORNERS)
        canvas.rect(x, y + height - form.foot, width, form.foot, style.deep)
    return style.ink


_HEAD = BandForm(radius=1.6, frame_radius=1.4, tint_radius=1.2, frame=1.0, foot=1.0)


def draw_head_band(canvas: Canvas, style: Style, x: float, y: float, width: float, height: float) -> str:
    """The band over a card or a panel; returns the colour of words on it."""
    with canvas.artefact():
        return draw_band_form(canvas, style, (x, y, width, height), _HEAD)
