"""The end of the fit ladder: a sheet is refused, with everything that does not fit and by how much."""

from __future__ import annotations

from collections.abc import Sequence

from signage.compose.part_names import overflow_message
from signage.drawing.marks import Overflow
from signage.ground.errors import RefusedError
from signage.words.wording import Wording


class TextTooLongError(RefusedError):
    """Words do not fit at their smallest readable size; ``overflows`` are for rules and reports.

    Each overflow names the text that it is about as far as one is like it, and the message its place.
    """

    def __init__(
        self, sheet: str, wording: Wording, paper: str, overflows: Sequence[Overflow], protocol: str = ""
    ) -> None:
        self.sheet, self.locale, self.paper = sheet, wording.tag, paper
        self.overflows = named_overflows(overflows, wording, protocol)
        found = " ".join(
            dict.fromkeys(
                f"{place}: {overflow_message(overflow)}"
                if (place := wording.place_of(overflow.message)).path
                else overflow_message(overflow)
                for overflow in self.overflows
            )
        )
        super().__init__(
            f"{sheet} in {self.locale} on {paper} does not fit at its smallest readable sizes: {found} "
            f"Shorten the words, or choose larger paper."
        )


def named_overflows(overflows: Sequence[Overflow], wording: Wording, protocol: str) -> tuple[Overflow, ...]:
    """The overflows, each with the context of the text that it was made from, where one is found."""
    return tuple(
        Overflow(
            overflow.role,
            overflow.message or wording.context_of(overflow.text, protocol),
            overflow.text,
            overflow.excess_mm,
        )
        for overflow in overflows
    )
