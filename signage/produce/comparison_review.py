"""A comparison as a PDF for reviewers: what changed in words, then the old and the new card of each step."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date

from signage.compose.comparison_sheet import CardPair, CardSide, Note, comparison_sheet
from signage.compose.proof import as_proof
from signage.compose.review_sheet import Passage
from signage.compose.step_card.card import compose_step_cards
from signage.control.comparison.protocols import ProtocolChange
from signage.control.comparison.steps import Change, StepChange
from signage.drawing.marks import Page, groups_of
from signage.drawing.roles import GroupRole
from signage.ground.errors import RefusedError
from signage.model.library import Protocol
from signage.model.mark import Mark
from signage.produce.comparing import Compared
from signage.produce.comparison_words import Section, exchanges_of, sections_of, step_words
from signage.produce.kept import NO_FAULTS
from signage.project import Project
from signage.words.numerals import autonym


def review_of_comparison(compared: Compared, today: date) -> bytes:
    """The PDF: its own words are English, each card is a draft in its language, a proof where it has gaps."""
    from signage.paint.pdf.document import paint_pdf  # noqa: PLC0415 - the PDF library is slow to load

    comparison, project = compared.comparison, compared.new
    title = f"What changed from {comparison.old} to {comparison.new}"
    sections = sections_of(comparison) or (Section("Nothing differs"),)
    passages = [Passage(each.head, tuple(_indented(*line) for line in each.lines)) for each in sections]
    protocol = next(iter(project.library.protocols.values()))
    context = project.context(protocol, project.library.source_locale, mark=Mark.DRAFT)
    pairs = tuple(CardDrawing(compared).pairs())
    return paint_pdf(comparison_sheet(context, title, f"{title} · {today.isoformat()}", passages, pairs))


def _indented(depth: int, line: str) -> str:
    return f"– {line}" if depth == 0 else f"\u2003{line}"


@dataclass
class CardDrawing:
    """The cards of both sides; those of a protocol in a language are composed once."""

    compared: Compared
    _cards: dict[tuple[bool, str, str], dict[str, Page]] = field(default_factory=dict)

    def pairs(self) -> Iterator[CardPair]:
        """A pair for each step that differs, in each language in which its card does."""
        for change in self.compared.comparison.protocols:
            for step in change.steps:
                for tag in self._languages(step):
                    yield self._pair(change, step, tag)

    def _languages(self, step: StepChange) -> Iterator[str]:
        """The source language for every step; the others where their own text differs.

        A gap shows as one: the language is among those that were made doubtful, with no page of its own.
        """
        source = self.compared.new.library.source_locale
        yield source
        differing = dict.fromkeys(each.locale for each in step.texts if each.new is not None)
        yield from (tag for tag in differing if tag != source)

    def _pair(self, change: ProtocolChange, step: StepChange, tag: str) -> CardPair:
        old = self._side(change.was, step.was, tag, is_new=False)
        new = self._side(change.protocol, step.step, tag, is_new=True)
        return CardPair(
            f"{change.code} {step.headline}",
            f"{step_words(step)} · {tag} {autonym(tag)}",
            old,
            new,
            tuple(self._notes(step, tag)),
        )

    def _notes(self, step: StepChange, tag: str) -> Iterator[Note]:
        """What differs, in words: fields, and the texts of this language."""
        for each in step.values:
            yield Note(each.path, is_head=True)
            yield Note(f"{each.old or 'none'} became {each.new or 'none'}")
        texts = [each for each in step.texts if each.locale == tag]
        for text in texts if Change.ADDED not in step.changes else ():
            yield Note(text.field, is_head=True)
            if text.old is not None and text.new is not None:
                yield Note(exchanges_of(text), wording=self.compared.new.wording(tag))
            elif text.new is None:
                yield Note(f"dropped: {text.old}")
            else:
                yield Note("new")

    def _side(self, protocol_id: str, step: str, tag: str, *, is_new: bool) -> CardSide:
        project = self.compared.new if is_new else self.compared.old
        name = self.compared.comparison.new if is_new else self.compared.comparison.old
        caption = f"{'After' if is_new else 'Before'} · {name}"
        protocol = project.library.protocols.get(protocol_id)
        if protocol is None or step not in {each.id for each in protocol.steps}:
            return CardSide(caption, None, "There is no such step.")
        try:
            card = self._cards_of(project, protocol, tag, is_new=is_new).get(step)
        except RefusedError as refusal:
            return CardSide(caption, None, f"It cannot be drawn: {refusal}")
        return CardSide(caption, card, "There is no card of it.")

    def _cards_of(self, project: Project, protocol: Protocol, tag: str, *, is_new: bool) -> dict[str, Page]:
        """The cards of a protocol by step: drafts, or proofs with their gaps named."""
        key = (is_new, protocol.id, tag)
        if key not in self._cards:
            try:
                sheet = compose_step_cards(project.context(protocol, tag, mark=Mark.DRAFT))
            except RefusedError:
                context = project.context(protocol, tag, mark=Mark.PROOF)
                sheet = as_proof(compose_step_cards(context), context, NO_FAULTS)
            self._cards[key] = {
                group.name: page for page in sheet.pages for group, _ in groups_of(page, GroupRole.STEP)
            }
        return self._cards[key]
