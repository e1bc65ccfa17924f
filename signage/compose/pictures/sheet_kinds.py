"""The documents about pictures by their kind, and the table that stands beside a trial."""

from __future__ import annotations

from collections.abc import Sequence

from signage.compose.papers import Paper
from signage.compose.pictures.context import PictureContext
from signage.compose.pictures.sheet import compose_picture_sheet
from signage.compose.pictures.trial_form import compose_trial
from signage.drawing.marks import Sheet
from signage.ground.errors import WrongUsageError
from signage.model.picture_trial import empty_table, trial_forms

PICTURES, TRIAL = "pictures", "picture-trial"
PICTURE_KINDS = (PICTURES, TRIAL)
"""Kinds of sheet that are made only when somebody asks for them."""

PICTURE_PAPERS = ("A4", "Letter")


def picture_papers(papers: Sequence[str]) -> tuple[str, ...]:
    """The papers for sheets about pictures among those that are asked for; none asked for is A4.

    Raises WrongUsageError where only others are asked for.
    """
    found = tuple(paper for paper in papers if paper in PICTURE_PAPERS)
    if papers and not found:
        raise WrongUsageError(
            f"Sheets about pictures are made on {' or '.join(PICTURE_PAPERS)}, not on {', '.join(papers)}."
        )
    return found or PICTURE_PAPERS[:1]


def compose_pictures(context: PictureContext, kind: str, paper: Paper, seed: int) -> Sheet:
    """One document about pictures; ``seed`` decides the orders of a trial."""
    if kind == TRIAL:
        return compose_trial(context, paper, seed)
    return compose_picture_sheet(context, paper)


def table_beside(context: PictureContext, kind: str, seed: int) -> str | None:
    """The table of ratings to fill in for a trial, as CSV; None for other kinds."""
    return empty_table(trial_forms(context.pictures, seed)) if kind == TRIAL else None
