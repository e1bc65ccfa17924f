"""A sheet that could not be composed at all: findings, each with the place of the text it is about."""

from __future__ import annotations

from signage.check.rule import Explanation, step_of
from signage.check.sheet_rules import overflow as overflow_rule
from signage.compose.part_names import overflow_message
from signage.compose.refusal import TextTooLongError
from signage.ground.errors import RefusedError
from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Severity
from signage.model.library import Protocol
from signage.words.wording import MissingMessageError, MissingValueError, Wording

EXPLANATION = Explanation(
    code="SH-0",
    name="sheet-refused",
    severity=Severity.S1,
    what="Whether each sheet that the library asks for can be composed and may be printed.",
    why="A sheet that is refused is missing on the ward, and an older one may hang in its place.",
    example="A step card in a language whose words lack one of its texts.",
    cure="Mend what the message names, then run 'signage check' again.",
)


def refusal_problems(
    refusal: RefusedError, wording: Wording, protocol: Protocol, sheet: str
) -> list[Problem]:
    """The findings: SH-1 for each text that does not fit, SH-0 for anything else."""
    if isinstance(refusal, TextTooLongError):
        rule = overflow_rule.EXPLANATION
        return [
            Problem(
                rule.code,
                rule.name,
                rule.severity,
                overflow_message(overflow),
                rule.cure,
                _place(wording.place_of(overflow.message), protocol),
                protocol.id,
                step_of(overflow.message, protocol),
                wording.tag,
                sheet,
                overflow.message,
            )
            for overflow in refusal.overflows
        ]
    text, place, sentence = None, NOWHERE, str(refusal)
    if isinstance(refusal, MissingMessageError | MissingValueError):
        text, place, sentence = refusal.context, refusal.place, refusal.sentence
    return [
        Problem(
            EXPLANATION.code,
            EXPLANATION.name,
            EXPLANATION.severity,
            sentence,
            EXPLANATION.cure,
            place=_place(place, protocol),
            protocol=protocol.id,
            step=step_of(text, protocol),
            locale=wording.tag,
            sheet=sheet,
            text=text,
        )
    ]


def _place(place: Place, protocol: Protocol) -> Place:
    return place if place.path else protocol.place
