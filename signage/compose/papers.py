"""Sizes of paper: the A series of ISO 216 and the North American sizes."""

from __future__ import annotations

from dataclasses import dataclass, replace

from signage.ground.errors import WrongUsageError

SMALLEST_POSTER_MM = 200.0
"""Posters on papers with a shorter side are made only when somebody asks for them."""

CUT_PAPERS = ("A4", "Letter")
"""Papers that a person cuts and folds, and those of forms; the first where a library has neither."""

CUT_PAPERS_WORDS = " or ".join(CUT_PAPERS)

LANDSCAPE = "-landscape"
"""Ending of the name of a paper that lies on its long side."""


@dataclass(frozen=True)
class Paper:
    """A sheet of paper as it hangs on the wall. Lengths in millimetres."""

    name: str
    width: float
    height: float
    is_landscape: bool = False

    @property
    def short_side(self) -> float:
        """The shorter of the two sides."""
        return min(self.width, self.height)

    def turned(self) -> Paper:
        """The same paper on its other side."""
        name = self.name.removesuffix(LANDSCAPE) if self.is_landscape else self.name + LANDSCAPE
        return replace(
            self, name=name, width=self.height, height=self.width, is_landscape=not self.is_landscape
        )


_PORTRAIT = (
    # ISO 216:2007, table of the A series, trimmed sizes
    Paper("A0", 841, 1189),
    Paper("A1", 594, 841),
    Paper("A2", 420, 594),
    Paper("A3", 297, 420),
    Paper("A4", 210, 297),
    Paper("A5", 148, 210),
    Paper("A6", 105, 148),
    Paper("A7", 74, 105),
    # ANSI/ASME Y14.1 sizes A and B, and the legal size of North American offices, all in whole inches
    Paper("Letter", 215.9, 279.4),
    Paper("Legal", 215.9, 355.6),
    Paper("Tabloid", 279.4, 431.8),
)

PAPERS = {paper.name: paper for upright in _PORTRAIT for paper in (upright, upright.turned())}
"""Every paper by its name; ``A3-landscape`` is A3 on its long side."""


def paper_names() -> tuple[str, ...]:
    """Every paper, upright and on its long side."""
    return tuple(PAPERS)


def paper_of(name: str) -> Paper:
    """The paper with a name, capitals aside; raises WrongUsageError for a name that is not known."""
    by_folded = {known.casefold(): paper for known, paper in PAPERS.items()}
    paper = by_folded.get(name.casefold())
    if paper is None:
        known = ", ".join(upright.name for upright in _PORTRAIT)
        raise WrongUsageError(
            f"'{name}' is not a paper. Known are {known}, each also with {LANDSCAPE} after its name."
        )
    return paper
