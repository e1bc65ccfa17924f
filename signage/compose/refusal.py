"""The end of the fit ladder: a sheet is refused, with everything that does not fit and by how much."""

from __future__ import annotations

from collections.abc import Sequence

from signage.drawing.marks import Overflow
from signage.ground.errors import RefusedError


class TextTooLongError(RefusedError):
    """Words do not fit at their smallest readable size; ``overflows`` are for rules and reports."""

    def __init__(self, sheet: str, locale: str, paper: str, overflows: Sequence[Overflow]) -> None:
        self.sheet, self.locale, self.paper = sheet, locale, paper
        self.overflows = tuple(overflows)
        found = "; ".join(
            f"{overflow.role} “{overflow.text}” is {overflow.excess_mm:g} mm too large"
            + (f" ({overflow.message})" if overflow.message else "")
            for overflow in self.overflows
        )
        super().__init__(
            f"{sheet} in {locale} on {paper} does not fit at its smallest readable sizes: {found}. "
            f"Shorten the words, or choose larger paper."
        )
