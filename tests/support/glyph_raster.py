"""Set glyphs as pixels, from their outlines alone, and a score of how well two rasters of a line agree."""

from functools import cache

import numpy as np
import pathops
from fontTools.pens.basePen import BasePen
from PIL import Image, ImageDraw

from signage.text.fonts import face

PIXELS_PER_EM = 64
OVERSAMPLING = 4
_CURVE_STEPS = 12
_INK = 110
_SHIFTS = range(-2, 3)


class _Contours(BasePen):
    """A pen that flattens curves to polygons."""

    def __init__(self):
        super().__init__()
        self.polygons = []

    def _moveTo(self, pt):  # noqa: N802 -- fontTools names it so
        self.polygons.append([pt])

    def _lineTo(self, pt):  # noqa: N802 -- fontTools names it so
        self.polygons[-1].append(pt)

    def _qCurveToOne(self, pt1, pt2):  # noqa: N802 -- fontTools names it so
        (x0, y0), (x1, y1), (x2, y2) = self.polygons[-1][-1], pt1, pt2
        for i in range(1, _CURVE_STEPS + 1):
            t = i / _CURVE_STEPS
            a, b, c = (1 - t) ** 2, 2 * t * (1 - t), t * t
            self.polygons[-1].append((a * x0 + b * x1 + c * x2, a * y0 + b * y1 + c * y2))


@cache
def _contours(key, glyph):
    """Outline polygons that neither overlap nor cross themselves, in units of the font."""
    outline = pathops.Path()
    face(key).font.draw_glyph_with_pen(glyph, outline.getPen())
    outline.simplify()
    pen = _Contours()
    outline.draw(pen)
    return [polygon for polygon in pen.polygons if len(polygon) > 2]


def raster_of(runs, margin=1.0):
    """Grey pixels of runs set from the left, 255 where there is ink, filled by the non-zero rule."""
    scale = PIXELS_PER_EM * OVERSAMPLING
    width = round((sum(run.advance for run in runs) + 2 * margin) * scale)
    baseline = 1.9 * scale
    ink = np.zeros((3 * scale, width), bool)
    x = margin
    for run in runs:
        unit = 1 / face(run.font).units_per_em
        for glyph in run.glyphs:
            left, rise = x + glyph.x_offset, glyph.y_offset
            placed = [
                [((left + px * unit) * scale, baseline - (rise + py * unit) * scale) for px, py in polygon]
                for polygon in _contours(run.font, glyph.id)
            ]
            if placed:
                _add_glyph(ink, placed)
            x += glyph.advance
    return np.asarray(Image.fromarray(ink.astype(np.uint8) * 255).reduce(OVERSAMPLING))


def _add_glyph(ink, polygons):
    """Polygons inside others are holes, so the filled ones are laid over each other by exclusive or."""
    xs, ys = zip(*(point for polygon in polygons for point in polygon), strict=True)
    left, top = max(0, int(min(xs)) - 1), max(0, int(min(ys)) - 1)
    size = (int(max(xs)) - left + 3, int(max(ys)) - top + 3)
    filled = np.zeros(size[::-1], bool)
    for polygon in polygons:
        mask = Image.new("1", size)
        ImageDraw.Draw(mask).polygon([(x - left, y - top) for x, y in polygon], fill=1)
        filled ^= np.asarray(mask)
    part = ink[top : top + size[1], left : left + size[0]]
    part |= filled[: part.shape[0], : part.shape[1]]


def _cropped(pixels):
    rows, columns = np.nonzero(pixels > _INK)
    return pixels[rows.min() : rows.max() + 1, columns.min() : columns.max() + 1] > _INK


def _grown(ink):
    """Ink and everything within one pixel of it."""
    padded = np.pad(ink, 1)
    height, width = ink.shape
    grown = np.zeros_like(ink)
    for down in range(3):
        for right in range(3):
            grown |= padded[down : down + height, right : right + width]
    return grown


def worst_window(first, second):
    """Agreement of two rasters of a line, 1 for all ink within one pixel of the other's.

    Ink boxes are laid upon one another, at the best of shifts by up to two pixels; the score is that of the
    half em that agrees least, so that one lost mark in a long line is not averaged away.
    """
    a, b = _cropped(first), _cropped(second)
    height, width = max(a.shape[0], b.shape[0]) + 8, max(a.shape[1], b.shape[1]) + 8
    still = np.zeros((height, width), bool)
    still[4 : 4 + a.shape[0], 4 : 4 + a.shape[1]] = a
    best, best_share = still, -1.0
    for down in _SHIFTS:
        for right in _SHIFTS:
            moved = np.zeros((height, width), bool)
            moved[4 + down : 4 + down + b.shape[0], 4 + right : 4 + right + b.shape[1]] = b
            share = (still & moved).sum() / (still | moved).sum()
            if share > best_share:
                best, best_share = moved, share
    unmatched = (still & ~_grown(best)) | (best & ~_grown(still))
    bad = np.concatenate([[0], np.cumsum(unmatched.sum(0))])
    ink = np.concatenate([[0], np.cumsum((still | best).sum(0))])
    window = min(PIXELS_PER_EM // 2, width)
    shares = [
        (bad[x + window] - bad[x]) / max(30, ink[x + window] - ink[x])
        for x in range(0, width - window + 1, 4)
    ]
    return 1.0 - max(shares)
