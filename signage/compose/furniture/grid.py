"""The columns of a sheet, on which its furniture starts as well."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Grid:
    """The columns on which gates, cards, key box and footer start."""

    starts: tuple[float, ...]
    width: float
    gutter: float

    def span(self, count: int) -> float:
        """The width of so many columns with the gutters between them."""
        return count * self.width + (count - 1) * self.gutter

    def end(self, column: int) -> float:
        """The end edge of a column."""
        return self.starts[column] + self.width
