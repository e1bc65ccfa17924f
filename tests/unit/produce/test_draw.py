"""What is drawn of a library with faults: refused, or as a proof that says so and cannot be mistaken."""

import shutil
from dataclasses import replace
from datetime import date

import demo
import pytest
from rehearsal_edits import without_steps
from sheet_edits import found

from signage.check.sheet_rules import text_overlap
from signage.drawing.marks import Group, TextMark, groups_of, texts_of, walk
from signage.drawing.roles import GroupRole
from signage.ground.geometry import Box
from signage.model.library import LocaleState
from signage.model.mark import Mark
from signage.produce.draw import Drawn, Refused, composed_as, draw_job, jobs_for
from signage.produce.release import Releases
from signage.produce.requests import SheetRequest, Wanted, requests_for

DAY = date(2026, 11, 28)
P1 = "layered-protection"
CARDS = SheetRequest(P1, "en", "step-cards", "", "A4")
POCKET = SheetRequest(P1, "ar", "pocket-checklist", "", "A4")
POSTER = SheetRequest("chair-turnaround", "bn", "poster", "turn-round", "A3")


def job(project, request, **options):
    return jobs_for(Releases(project, DAY), [request], **options)[0]


def project_with(**values):
    own = demo.project()
    return replace(own, library=replace(own.library, **values))


@pytest.fixture(scope="module")
def unsafe():
    """The demo with an order that can hurt."""
    library = demo.project().library
    protocol = without_steps(library.protocols[P1], "rub-after-outer")
    return project_with(protocols={**library.protocols, P1: protocol})


@pytest.fixture(scope="module")
def mistranslated(tmp_path_factory):
    """The demo whose French takes off another garment than the step."""
    own = demo.project()
    locales = tmp_path_factory.mktemp("words") / "locales"
    shutil.copytree(own.locales, locales)
    catalogue = locales / "fr" / "LC_MESSAGES" / "content.po"
    text = catalogue.read_text(encoding="utf-8")
    start = text.index('msgstr "', text.index(f'msgctxt "{P1}/outer-gloves-off/text"'))
    end = text.index("\n", start)
    catalogue.write_text(text[:start] + 'msgstr "Retirer le tablier"' + text[end:], encoding="utf-8")
    return replace(own, locales=locales)


def test_an_order_that_can_hurt_is_refused_with_its_place_in_every_language(unsafe, tmp_path):
    for request in (CARDS, POCKET):
        refused = draw_job(unsafe, job(unsafe, request), tmp_path)
        assert isinstance(refused, Refused)
        assert "layered-protection.yaml:" in refused.why
        assert "HH-1" in refused.why
        assert refused.on_request is Mark.PROOF
    assert not list(tmp_path.rglob("*.pdf"))


def test_wrong_words_are_refused_in_their_language_only(mistranslated, tmp_path):
    french = draw_job(mistranslated, job(mistranslated, replace(CARDS, locale="fr")), tmp_path)
    assert isinstance(french, Refused)
    assert "content.po:" in french.why
    assert isinstance(draw_job(mistranslated, job(mistranslated, CARDS), tmp_path), Drawn)
    other = replace(CARDS, protocol="chair-turnaround", locale="fr")
    assert isinstance(draw_job(mistranslated, job(mistranslated, other), tmp_path), Drawn)


def sentences_on_edges(page):
    ribbons = [mark for mark, _ in walk(page.marks) if isinstance(mark, Group) and mark.role == "ribbon"]
    return {
        (group.name, mark.language)
        for group in ribbons
        for mark, _ in walk(group.marks)
        if isinstance(mark, TextMark)
    }


@pytest.mark.parametrize(
    ("request_", "languages"), [(CARDS, {"en"}), (POCKET, {"en", "ar"}), (POSTER, {"en", "bn"})]
)
def test_a_proof_says_so_on_four_edges_carries_no_code_and_outlines_its_faults(unsafe, request_, languages):
    sheet, release = composed_as(unsafe, job(unsafe, request_, wants_proof=True))
    assert sheet.mark == "proof"
    assert "proof" in sheet.file_stem
    assert release.decision.reasons
    outlined = 0
    for page in sheet.pages:
        edges = sentences_on_edges(page)
        assert {edge for edge, _ in edges} == {"top", "bottom", "left", "right"}
        assert {tag for _, tag in edges} == languages
        if request_ is not POCKET:  # its edges are too short for two sentences
            assert len(edges) == 4 * len(languages)
        assert not groups_of(page, GroupRole.QR)
        outlined += sum(
            len(mark.marks)
            for mark, _ in walk(page.marks)
            if isinstance(mark, Group) and mark.role == "faults"
        )
        said = " ".join(mark.text for mark, _ in texts_of(page))
        assert "DRAFT" not in said
    assert outlined


def test_every_piece_of_a_cut_sheet_is_a_proof(unsafe):
    sheet, _ = composed_as(unsafe, job(unsafe, CARDS, wants_proof=True))
    cards = [card for card, _ in groups_of(sheet.pages[0], GroupRole.CARD)]
    assert len(cards) == 4
    assert all(len({name for name, _ in sentences_on_edges(card)}) == 4 for card in cards)


def test_no_sentence_on_the_edge_of_a_proof_lies_on_another(unsafe):
    # French and its source side by side are longer than the edge of a panel or a card
    for locale in ("fr", "en-XA"):
        for request in (POCKET, CARDS):
            sheet, _ = composed_as(unsafe, job(unsafe, replace(request, locale=locale), wants_proof=True))
            context = demo.context(locale, protocol=P1)
            assert not found(text_overlap.RULE, sheet, context), (locale, request.kind)
            for page in sheet.pages:
                paper = Box(0, 0, page.width, page.height)
                for mark, box in texts_of(page):
                    assert mark.role != "ribbon" or paper.contains(box, 0.05), (locale, mark.text)


def test_a_missing_text_names_its_message_and_is_never_english():
    project = demo.project()
    sheet, release = composed_as(project, job(project, POSTER, wants_proof=True))
    assert f"{POSTER.protocol}/wipe-dirty-chair/text" in release.facts.gaps
    texts = [mark for page in sheet.pages for mark, _ in texts_of(page) if mark.role == "headline"]
    assert any(mark.text.startswith("wipe-dirty-chair/") for mark in texts)
    english = {step.text for step in project.library.protocols[POSTER.protocol].steps}
    assert not english & {mark.text for mark in texts}


def test_a_language_is_in_use_for_one_protocol_and_in_work_for_another(tmp_path):
    library = demo.project().library
    partly = replace(library.locales["fr"], protocols=("chair-turnaround",))
    project = project_with(locales={**library.locales, "fr": partly})
    made = {
        (request.protocol, request.locale)
        for request in requests_for(project, Wanted())
        if request.locale == "fr"
    }
    assert made == {("chair-turnaround", "fr")}
    releases = Releases(project, DAY)
    assert releases.of("chair-turnaround", "fr").decision.mark is Mark.DRAFT
    assert releases.of(P1, "fr").decision.mark is Mark.REFUSED
    assert releases.of(P1, "fr").decision.on_request is Mark.PROOF
    assert releases.of(P1, "ar").decision.mark is Mark.DRAFT


def test_a_fault_on_the_composed_sheet_refuses_it(monkeypatch, tmp_path):
    from signage.check.sheet_rules import step_order

    def always(subject):
        yield subject.problem(step_order.STEP_NUMBERS, "step 2 stands before step 1")

    monkeypatch.setattr(
        "signage.produce.making.all_sheet_rules", lambda: (replace(step_order.RULE, find=always),)
    )
    project = demo.project()
    refused = draw_job(project, job(project, CARDS), tmp_path)
    assert isinstance(refused, Refused)
    assert "step 2 stands before step 1" in refused.why
    proof, _ = composed_as(project, job(project, CARDS, wants_proof=True))
    assert proof.mark == "proof"


def test_a_language_in_work_prints_nothing_unasked(tmp_path):
    library = demo.project().library
    in_work = replace(library.locales["hi"], state=LocaleState.IN_WORK)
    project = project_with(locales={**library.locales, "hi": in_work})
    assert all(request.locale != "hi" for request in requests_for(project, Wanted()))
    refused = draw_job(project, job(project, replace(CARDS, locale="hi")), tmp_path)
    assert "in work" in refused.why
