"""The fixed lengths of a poster at its scale, and its columns."""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose.furniture.grid import Grid
from signage.compose.papers import Paper

LEAST_SCALE = 0.85
"""Smaller paper does not make smaller type: it makes more sheets."""

LEAST_MARGIN = 10.0


def scale_of(paper: Paper) -> float:
    """The k of the design system: 1 on A3, 2 on A1, never below ``LEAST_SCALE``."""
    return max(LEAST_SCALE, paper.short_side / 297.0)


def margin_of(paper: Paper) -> float:
    """The empty edge of a paper, which holds nothing but the draft ribbon."""
    return max(LEAST_MARGIN, 12 * scale_of(paper))


@dataclass(frozen=True)
class Measures:
    """Millimetres on paper. Everything here has grown with ``scale`` already."""

    width: float
    height: float
    scale: float
    margin: float
    title: float
    title_gap: float
    footer: float
    footer_gap: float
    rail: float
    rail_inside: float
    pad_x: float
    pad: float
    band: float
    name_line: float
    strip: float
    gutter: float
    split_gutter: float
    panel_gap: float
    is_landscape: bool

    @property
    def inner_width(self) -> float:
        """Between the margins."""
        return self.width - 2 * self.margin

    @property
    def top(self) -> float:
        """Where the first panel begins."""
        return self.margin + self.title + self.title_gap

    @property
    def footer_top(self) -> float:
        """The rule above the footer."""
        return self.height - self.margin - self.footer

    @property
    def space(self) -> float:
        """The height that panels may fill."""
        return self.footer_top - self.footer_gap - self.top


def measures_of(paper: Paper, footer: float, qr_least: float, growth: float = 1.0) -> Measures:
    """The lengths on a paper; ``growth`` enlarges all but the margin where a protocol is short.

    ``footer`` is the height its text needs; ``qr_least`` the least side of the code in the title band.
    """
    k = scale_of(paper) * growth
    is_landscape = paper.is_landscape
    return Measures(
        width=paper.width,
        height=paper.height,
        scale=k,
        margin=margin_of(paper),
        title=max((30 if is_landscape else 36) * k, qr_least + 8 * k),
        title_gap=(4 if is_landscape else 5) * k,
        footer=footer,
        footer_gap=(3.5 if is_landscape else 4.5) * k,
        rail=5 * k,
        rail_inside=2.4 * k,
        pad_x=3 * k,
        pad=(2.6 if is_landscape else 3) * k,
        band=(12.5 if is_landscape else 14) * k,
        name_line=9 * k,
        strip=(11 if is_landscape else 12) * k,
        gutter=(6 if is_landscape else 5) * k,
        split_gutter=6 * k,
        panel_gap=4 * k,
        is_landscape=is_landscape,
    )


def grid_of(measures: Measures, columns: int, *, is_split: bool = False) -> Grid:
    """So many equal columns; the gutter is wide enough for a rail where a zone ends inside a row."""
    gutter = measures.split_gutter if is_split else measures.gutter
    start = measures.margin + measures.rail + measures.pad_x
    inner = measures.inner_width - measures.rail - 2 * measures.pad_x
    width = (inner - (columns - 1) * gutter) / columns
    return Grid(tuple(start + index * (width + gutter) for index in range(columns)), width, gutter)
