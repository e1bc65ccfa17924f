"""A sheet that could not be composed at all: findings, each with the place of the text it is about."""

from __future__ import annotations

from collections.abc import Iterator

from signage.check.rule import SHEET_REFUSED, step_of
from signage.check.sheet_rules.overflow import TEXT_OVERFLOW
from signage.compose.part_names import overflow_message
from signage.compose.refusal import TextTooLongError
from signage.ground.errors import RefusedError
from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem
from signage.model.library import Protocol
from signage.words.wording import MissingMessageError, MissingValueError, Wording


def refusal_problems(
    refusal: RefusedError, wording: Wording, protocol: Protocol | None, sheet: str
) -> Iterator[Problem]:
    """The findings: SH-1 for each text that does not fit, SH-0 for anything else."""
    if isinstance(refusal, TextTooLongError):
        for overflow in refusal.overflows:
            yield TEXT_OVERFLOW.problem(
                overflow_message(overflow),
                _place(wording.place_of(overflow.message), protocol),
                protocol=protocol.id if protocol else None,
                step=step_of(overflow.message, protocol),
                locale=wording.tag,
                sheet=sheet,
                text=overflow.message,
            )
        return
    text, place, sentence = None, NOWHERE, str(refusal)
    if isinstance(refusal, MissingMessageError | MissingValueError):
        text, place, sentence = refusal.context, refusal.place, refusal.sentence
    yield SHEET_REFUSED.problem(
        sentence,
        _place(place, protocol),
        protocol=protocol.id if protocol else None,
        step=step_of(text, protocol),
        locale=wording.tag,
        sheet=sheet,
        text=text,
    )


def _place(place: Place, protocol: Protocol | None) -> Place:
    return place if place.path or protocol is None else protocol.place
