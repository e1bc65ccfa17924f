"""The finished document: drawn pages with all that a file name, a title and a rule need."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from signage.compose.canvas import Canvas
from signage.compose.context import LocaleContext
from signage.drawing.marks import FitStep, Sheet
from signage.model.library import Protocol


def finished_sheet(
    context: LocaleContext,
    kind: str,
    title: str,
    canvases: Sequence[Canvas],
    *,
    protocol: Protocol | None,
    paper: str = "",
    stem: str = "",
    phase: str = "",
    climbed: Iterable[FitStep] = (),
) -> Sheet:
    """One document of a kind; ``protocol`` is the one that it is about, None for a whole library.

    ``stem`` is the kind in the name of the file where it is another than its name; ``climbed`` are the rungs
    of the fit ladder that were taken before anything was drawn. ``paper`` is empty for pages to be imposed.
    """
    wording = context.wording
    start = f"{protocol.id}-" if protocol else ""
    rungs = (*climbed, *(step for canvas in canvases for step in canvas.fit_steps))
    return Sheet(
        kind=kind,
        protocol=protocol.id if protocol else "",
        locale=wording.tag,
        title=title,
        paper=paper,
        revision=context.revision,
        is_right_to_left=wording.is_right_to_left,
        pages=tuple(canvas.page() for canvas in canvases),
        file_stem=f"{start}{stem or kind}-{wording.tag}",
        phase=phase,
        mark=context.mark.value,
        fit=tuple(dict.fromkeys(rungs)),
        overflows=tuple(overflow for canvas in canvases for overflow in canvas.overflows),
    )
