"""On which papers a kind of sheet is made, and why not on others."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from signage.compose.papers import paper_of


@dataclass(frozen=True)
class PaperChoice:
    """The papers of a kind of sheet.

    ``names``: the only ones it is made on, empty for all. ``made_on`` says them to people, such as ``folded
    from A4 or Letter``. ``single``: those that hold one page of it and are made besides the papers of the
    library. ``usual``: the one that is used where the library has none of them. ``least_side``: the shortest
    side in millimetres; smaller papers are used only when somebody asks for this kind, since what stands on
    them is ``too_small``. ``is_of_library``: whether the papers of library.yaml count.
    """

    names: tuple[str, ...] = ()
    made_on: str = ""
    single: tuple[str, ...] = ()
    usual: str = ""
    least_side: float = 0.0
    too_small: str = ""
    is_of_library: bool = True

    def chosen(self, asked: Sequence[str], library: Sequence[str], *, is_named: bool) -> tuple[str, ...]:
        """Of the papers asked for, else of the library, those to use; ``is_named``: the kind was named."""
        if asked:
            return tuple(paper for paper in asked if self._takes(paper, is_named=is_named))
        offered = library if self.is_of_library else ()
        found = tuple(
            paper for paper in offered if self._takes(paper, is_named=is_named) and paper not in self.single
        )
        if not found and self.usual:
            found = (self.usual,)
        return (*self.single, *found)

    def _takes(self, paper: str, *, is_named: bool) -> bool:
        if self.names and paper not in self.names:
            return False
        return is_named or paper_of(paper).short_side >= self.least_side
