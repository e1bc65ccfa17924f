"""The finished document of a poster, whatever its layout."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from signage.compose.canvas import Canvas
from signage.compose.context import SheetContext
from signage.compose.envelope import finished_sheet
from signage.compose.papers import Paper
from signage.compose.refusal import TextTooLongError
from signage.drawing.marks import FitStep, Overflow, Sheet
from signage.model.library import Phase


def poster_sheet(
    context: SheetContext,
    phase: Phase,
    paper: Paper,
    canvases: Sequence[Canvas],
    climbed: Iterable[FitStep],
    excess: Iterable[Overflow],
    kind: str = "poster",
) -> Sheet:
    """The pages as one document; ``climbed`` and ``excess`` were found before anything was drawn.

    Raises TextTooLongError, a refusal, where any text did not fit: nothing is cut off unseen.
    """
    wording, protocol = context.wording, context.protocol
    overflows = (*excess, *(overflow for canvas in canvases for overflow in canvas.overflows))
    if overflows:
        different = tuple(dict.fromkeys(overflows))
        raise TextTooLongError(f"poster {phase.id}", wording, paper.name, different, protocol.id)
    title = wording.content(f"{protocol.id}/phase/{phase.id}/title")
    return finished_sheet(
        context,
        kind,
        f"{protocol.code} {title}",
        canvases,
        protocol=protocol,
        paper=paper.name,
        stem=f"poster-{phase.id}",
        phase=phase.id,
        climbed=climbed,
    )
