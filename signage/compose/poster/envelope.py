"""The finished document of a poster, whatever its layout."""

from __future__ import annotations

from collections.abc import Sequence

from signage.compose.context import SheetContext
from signage.compose.papers import Paper
from signage.compose.refusal import TextTooLongError
from signage.drawing.marks import FitStep, Overflow, Page, Sheet
from signage.model.library import Phase


def poster_sheet(
    context: SheetContext,
    phase: Phase,
    paper: Paper,
    pages: Sequence[Page],
    climbed: Sequence[FitStep],
    overflows: Sequence[Overflow],
    kind: str = "poster",
) -> Sheet:
    """The pages with all that a file name, a title and a rule need.

    Raises TextTooLongError, a refusal, where any text did not fit: nothing is cut off unseen.
    """
    wording, protocol = context.wording, context.protocol
    if overflows:
        different = tuple(dict.fromkeys(overflows))
        raise TextTooLongError(f"poster {phase.id}", wording, paper.name, different, protocol.id)
    title = wording.content(f"{protocol.id}/phase/{phase.id}/title")
    return Sheet(
        kind=kind,
        protocol=protocol.id,
        locale=wording.tag,
        title=f"{protocol.code} {title}",
        paper=paper.name,
        revision=context.revision,
        is_right_to_left=wording.is_right_to_left,
        pages=tuple(pages),
        file_stem=f"{protocol.id}-poster-{phase.id}-{wording.tag}",
        phase=phase.id,
        mark=context.mark.value,
        fit=tuple(dict.fromkeys(climbed)),
    )
