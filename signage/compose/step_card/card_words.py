"""What each card of a set says, looked up and measured once: its words, and the ruled rows at its foot."""

from __future__ import annotations

from dataclasses import dataclass

from signage.compose.arrangement import NumberedStep
from signage.compose.context import SheetContext
from signage.compose.step_card.words import condition_stack, fact_stack, phase_rule
from signage.compose.typesetting import Face, Room, fit, line_width
from signage.compose.word_stack import WordStack
from signage.drawing.roles import TypeRole
from signage.model.choices import RuleKind
from signage.words.wording import StepField

LEAST_RULED = 9.0
_LEAST_ROW = 5.8
"""Height of a ruled row with one line: why, caution."""

_RULED: tuple[StepField, ...] = ("why", "caution")
_LABELS = (*_RULED, "stop")


@dataclass(frozen=True)
class CardWords:
    """The words of one card: stacks and rows are set for its width."""

    numbered: NumberedStep
    headline: str
    detail: str | None
    condition: WordStack
    facts: WordStack
    rows: tuple[RuledRow, ...]


def card_words(context: SheetContext, numbered: NumberedStep, width: float) -> CardWords:
    """Look up and measure what a card says in a column of a width."""
    wording, protocol, step = context.wording, context.protocol, numbered.step
    return CardWords(
        numbered,
        wording.step_text(protocol, step, "text") or "",
        wording.step_text(protocol, step, "detail"),
        condition_stack(context, step, width),
        fact_stack(context, step, width),
        tuple(_ruled_rows(context, numbered, width)),
    )


@dataclass(frozen=True)
class RuledRow:
    """Why, caution or rule of the phase: a word, and a text on one line where it fits.

    ``label`` is the fixed text of the word, ``message`` the context of the text.
    Lengths in millimetres.
    """

    role: TypeRole
    label: str
    message: str
    text: str
    label_width: float
    lines: int
    height: float


def _ruled_rows(context: SheetContext, numbered: NumberedStep, width: float) -> list[RuledRow]:
    """Reason and caution of a step, where it has them, and the rule that stops all steps of its phase."""
    wording, protocol = context.wording, context.protocol
    label_face = Face.of(wording, 700)
    widths = [line_width(wording.fixed(name), label_face, 9.5) for name in _LABELS]
    label = min(max(17.5, *(each + 2.5 for each in widths)), width * 0.35)
    texts: list[tuple[TypeRole, str, str, str | None]] = [
        (
            TypeRole(field),
            field,
            f"{protocol.id}/{numbered.step.told_as}/{field}",
            wording.step_text(protocol, numbered.step, field),
        )
        for field in _RULED
    ]
    phase = phase_rule(context, numbered)
    if phase is not None:
        message = f"{protocol.id}/phase/{phase.id}/rule"
        word = "stop" if phase.rule_kind is RuleKind.STOP else "caution"
        texts.append((TypeRole.KEY_RULE, word, message, wording.phase_rule(protocol, phase)))
    rows: list[RuledRow] = []
    for role, word, message, text in texts:
        if text:
            face = row_face(context, role)
            found = fit(text, face, 10, LEAST_RULED, Room(width - label, _LEAST_ROW - 0.6, 1))
            if found.excess:
                found = fit(text, face, 10, LEAST_RULED, Room(width - label, lines=_most_lines(role)))
            if found.excess:
                found = fit(text, face, LEAST_RULED, LEAST_RULED, Room(width - label))
            lines = found.measured.count
            height = max(_LEAST_ROW, found.measured.ink_height + 1.4)
            rows.append(RuledRow(role, word, message, text, label, lines, height))
    return rows


def _most_lines(role: TypeRole) -> int:
    """A rule is a sentence or two; a reason or a caution is short."""
    return 3 if role is TypeRole.KEY_RULE else 2


def row_face(context: SheetContext, role: TypeRole) -> Face:
    """Cautions and rules are heavier than a reason."""
    return Face.of(context.wording, 400 if role is TypeRole.WHY else 600)
