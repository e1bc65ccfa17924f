"""The review of a comparison: the cards of a step that changed stand side by side, as readers hold them."""

from dataclasses import replace

import pytest
from edition_samples import DAY
from signing import SignedCopy

from signage.compose.comparison_sheet import CardPair, CardSide, Note, comparison_sheet
from signage.compose.review_sheet import Passage
from signage.drawing.marks import Group, walk
from signage.drawing.roles import GroupRole
from signage.model.mark import Mark
from signage.paint.pdf.document import paint_pdf
from signage.pictograms.picture import NOTHING_KEPT
from signage.produce.comparing import Side, compare_sides
from signage.produce.comparison_review import CardDrawing
from signage.produce.comparison_words import sections_of

CAUTION = 'msgstr "لمس الجلد السطح الخارجي؟ أخبر الممرض."'


@pytest.fixture(scope="module")
def compared(tmp_path_factory):
    """A translation of P2 differs, and one source text, so that other languages have gaps."""
    folder = tmp_path_factory.mktemp("sides")
    old, new = SignedCopy(folder / "old"), SignedCopy(folder / "new")
    new.replace("locales/ar/LC_MESSAGES/content.po", CAUTION, CAUTION.replace("أخبر", "توقف وأخبر"))
    new.replace("content/protocols/contact-room.yaml", "why: The gloves bring dirt", "why: Gloves bring dirt")
    sides = tuple(
        Side(name, each.folder / "content", each.folder / "locales")
        for name, each in (("A", old), ("B", new))
    )
    return compare_sides(sides, NOTHING_KEPT, DAY)


@pytest.fixture(scope="module")
def pairs(compared):
    return list(CardDrawing(compared).pairs())


def test_each_step_that_differs_has_a_page_in_each_language_in_which_its_text_does(pairs):
    told = [(pair.title, pair.subtitle.split(" · ")[1][:2]) for pair in pairs]
    assert ("P2 Take off gloves", "ar") in told
    assert ("P2 Rub both gloves", "en") in told
    assert len(told) == len(set(told))
    for pair in pairs:
        assert pair.old.card is not None
        assert pair.new.card is not None
        assert pair.old.card != pair.new.card or pair.subtitle.endswith("English")


def test_a_card_in_a_language_with_gaps_is_a_proof_and_others_are_drafts(pairs):
    def is_proof(side):
        roles = {mark.role for mark, _ in walk(side.card.marks) if isinstance(mark, Group)}
        assert len(roles & {GroupRole.QR, GroupRole.NO_CODE}) == 1
        return GroupRole.NO_CODE in roles

    told = {
        (pair.title, pair.subtitle.split(" · ")[1][:2]): (is_proof(pair.old), is_proof(pair.new))
        for pair in pairs
    }
    assert told["P2 Take off gloves", "ar"] == (False, True)
    assert told["P2 Take off gloves", "en"] == told["P2 Rub both gloves", "en"] == (False, False)


def test_cards_keep_their_size_and_notes_begin_at_the_edge_of_their_language(compared, pairs):
    project = compared.new
    protocol = project.library.protocols["contact-room"]
    context = project.context(protocol, "en", mark=Mark.DRAFT)
    gone = replace(pairs[0], new=CardSide("After", None, "There is no such step."))
    sheet = comparison_sheet(context, "t", "f", [Passage("h", ("l",))], [*pairs[:2], gone])
    assert [(page.width, page.height) for page in sheet.pages[1:]] == [(297.0, 210.0)] * 3
    for page in sheet.pages[1:]:
        cards = [mark for mark in page.marks if isinstance(mark, Group) and mark.clip is not None]
        assert {(mark.box.width, mark.box.height) for mark in cards} == {(105.0, 148.0)}
        assert all(mark.transform.a == mark.transform.d == 1.0 for mark in cards)
        for mark in cards:
            box = mark.transform.box(mark.box)
            assert 0 < box.x < box.right < page.width
            assert 0 < box.y < box.bottom < page.height
    assert not sheet.overflows
    assert paint_pdf(sheet) == paint_pdf(sheet)


def test_a_note_of_many_words_is_set_smaller_before_it_runs_off_the_page(compared):
    project = compared.new
    context = project.context(project.library.protocols["contact-room"], "en", mark=Mark.DRAFT)
    side = CardSide("Before", None, "None.")
    for words in (3, 300):
        notes = (Note("why", is_head=True), Note("word " * words))
        sheet = comparison_sheet(context, "t", "f", [], [CardPair("t", "s", side, side, notes)])
        bottoms = [box.bottom for _mark, box in sheet.pages[-1].texts]
        assert max(bottoms) < 210.0


def test_the_words_name_what_changed_with_both_texts(compared):
    lines = [line for section in sections_of(compared.comparison) for _depth, line in section.lines]
    assert any(line.startswith("caution [ar]: “") and "became" in line for line in lines)
    heads = [section.head for section in sections_of(compared.comparison)]
    assert heads[0].startswith("P2 ")
    assert "Languages made doubtful" in heads
