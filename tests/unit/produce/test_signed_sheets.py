"""A copy of the demo is signed, edited, withdrawn and damaged; what is drawn of it follows each time."""

from dataclasses import replace
from datetime import timedelta

import pytest
from outside_readers import outside
from signing import DAY, SignedCopy

from signage.control.approved_content import path_of
from signage.control.signatures import make_key
from signage.control.waiving import excuse
from signage.ground.errors import RefusedError
from signage.ground.fingerprint import canonical_json
from signage.model.mark import Mark
from signage.produce.draw import Drawn, draw_job, jobs_for
from signage.produce.release import Releases
from signage.produce.requests import Wanted, requests_for
from signage.produce.signing import withdraw

PdfReader = outside("pypdf").PdfReader

PROTOCOL = "content/protocols/clean-hands.yaml"
ARABIC = "locales/ar/LC_MESSAGES/content.po"


@pytest.fixture(scope="module")
def signed_once(tmp_path_factory):
    """P3 is signed in English and Arabic, for use."""
    copy = SignedCopy(tmp_path_factory.mktemp("signed") / "wärd a")
    copy.check_off("ar")
    copy.sign()
    copy.sign("ar", by="ipc-doctor")
    return copy


@pytest.fixture
def signed(signed_once, tmp_path):
    """The same, to be changed."""
    return SignedCopy(tmp_path / "wärd a", of=signed_once.folder)


def drawn(copy, tag="en", kind="pocket-checklist", paper="A4", day=DAY, proof=False):
    """What a sheet of P3 comes out as."""
    project = copy.project
    wanted = Wanted(("clean-hands",), (tag,), (kind,), (paper,))
    (job, *_) = jobs_for(Releases(project, day), requests_for(project, wanted), wants_proof=proof)
    return draw_job(project, job, copy.folder / "out")


def said_by(sheet):
    """The text of a PDF, as another programme reads it."""
    return " ".join(page.extract_text() for page in PdfReader(sheet.path).pages)


def test_a_signed_sheet_says_who_signed_and_when_and_no_longer_that_it_is_a_draft(signed):
    for kind, paper in (("poster", "A4"), ("step-cards", "A6"), ("pocket-checklist", "A4")):
        sheet = drawn(signed, kind=kind, paper=paper)
        assert (sheet.mark, sheet.reasons) == (Mark.NONE, ()), kind
        said = " ".join(said_by(sheet).split())
        for words in ("ward-lead", "26 November 2026", "31 May 2027", "Role as declared", sheet.revision):
            assert words in said, (kind, words)
        assert "draft" not in said.lower(), kind
    arabic = said_by(drawn(signed, "ar"))
    assert "ipc-doctor" in arabic
    assert "ward-lead" in arabic


def test_one_edited_word_brings_the_mark_back_in_every_place(signed):
    for path, old, new, tag, told in (
        (PROTOCOL, "Rings, watch and sleeves", "Ring, watch and sleeves", "en", "step bare-hands changed"),
        ("content/kit.yaml", "covers: [trunk, legs]", "covers: [trunk]", "en", "kit: scrubs changed"),
        ("content/policy.yaml", "min-rub:\n    value: 20", "min-rub:\n    value: 30", "en", "min-rub"),
        ("content/library.yaml", "Quillmere Harbour", "Quillmere", "en", "hospital changed"),
    ):
        before = (signed.folder / path).read_bytes()
        signed.replace(path, old, new)
        sheet = drawn(signed, tag)
        assert sheet.mark is Mark.DRAFT, new
        assert told in " ".join(sheet.reasons), (new, sheet.reasons)
        assert "DRAFT" in said_by(sheet)
        (signed.folder / path).write_bytes(before)
        assert drawn(signed, tag).mark is Mark.NONE


def test_another_make_of_the_kit_on_the_shelf_makes_drafts_until_somebody_has_signed_anew(tmp_path):
    """By the act that the guide names; P7 wears the coverall, P3 wears none of it."""
    copy = SignedCopy(tmp_path / "ward")
    for code in ("P3", "P7"):
        copy.sign(code=code)
    for path, old, new, told in (
        (
            "content/wards/lantern-bay.yaml",
            "models: {coverall: flap}",
            "models: {coverall: looped}",
            "models",
        ),
        ("content/kit.yaml", "model: flap", "model: looped", "kit: coverall"),
    ):
        copy.replace(path, old, new)
        releases = Releases(copy.project, DAY)
        decision = releases.of("gone-wrong", "en").decision
        assert decision.mark is Mark.DRAFT, path
        assert told in " ".join(reason.text for reason in decision.reasons), path
        assert releases.of("clean-hands", "en").decision.mark is Mark.NONE, path
        copy.replace(path, new, old)
        assert Releases(copy.project, DAY).of("gone-wrong", "en").decision.mark is Mark.NONE, path


def test_one_edited_word_of_a_language_ends_its_check_and_leaves_the_others_signed(signed):
    signed.replace(ARABIC, 'msgstr "خذ ملء الكف"', 'msgstr "خذ ملء الكف."')
    arabic = drawn(signed, "ar")
    assert arabic.mark is Mark.DRAFT
    assert "second person" in arabic.reasons[0]
    assert drawn(signed, "en").mark is Mark.NONE
    signed.check_off("ar")
    arabic = drawn(signed, "ar")
    assert arabic.mark is Mark.DRAFT
    assert "Changed since ipc-doctor signed its words in ar on 2026-11-26: texts:" in arabic.reasons[0]
    signed.sign("ar", by="ipc-doctor")
    assert drawn(signed, "ar").mark is Mark.NONE


def test_fingerprints_do_not_change_with_order_form_and_line_ends(signed):
    """Comments, other quotes, keys in another order and the line ends of Windows say the same."""
    for path in sorted((signed.folder / "content").rglob("*.yaml")):
        data = path.read_bytes()
        path.write_bytes(b"# a remark\n" + data.replace(b"\n", b"\r\n"))
    signed.replace(PROTOCOL, "code: P3\r\ntitle: Clean hands\r\n", "title: 'Clean hands'\r\ncode: P3\r\n")
    sheet = drawn(signed)
    assert (sheet.mark, sheet.reasons) == (Mark.NONE, ())


def test_review_overdue_withdrawn_and_signed_anew(signed):
    late = drawn(signed, day=DAY + timedelta(days=400))
    assert (late.mark, "overdue" in " ".join(late.reasons)) == (Mark.DRAFT, True)
    project = signed.project
    role, protocol = project.library.people["ward-lead"], project.library.protocols["clean-hands"]
    withdraw(project, protocol, "ar", role, "A wrong word.", DAY)
    refused = drawn(signed, "ar", proof=True)
    assert not isinstance(refused, Drawn)
    assert "P3 in ar was withdrawn by ward-lead on 2026-11-26: 'A wrong word.'" in refused.why
    assert drawn(signed, "en").mark is Mark.NONE
    withdraw(project, protocol, None, role, "An outbreak.", DAY)
    assert "approvals.jsonl:5:1: P3 was withdrawn" in drawn(signed, "en").why
    signed.sign()
    assert drawn(signed, "en").mark is Mark.NONE
    assert "P3 in ar was withdrawn" in drawn(signed, "ar").why


def test_a_damaged_or_cut_log_and_missing_content_leave_drafts(signed):
    log = signed.folder / "content/approvals.jsonl"
    data = log.read_bytes()
    for damaged, told in (
        (
            data.replace(b"ward-lead", b"ward-laed", 1),
            "jsonl:1:1: No sign-off counts: This line was",
        ),
        (b"".join(data.splitlines(keepends=True)[:2]), "3 records were seen, and the file holds 2"),
    ):
        log.write_bytes(damaged)
        sheet = drawn(signed)
        assert sheet.mark is Mark.DRAFT
        assert told in " ".join(sheet.reasons), sheet.reasons
    log.write_bytes(data)
    record = signed.project.sign_offs.of("P3").order
    kept = path_of(signed.folder / "content", record.binds)
    kept.write_bytes(kept.read_bytes().replace(b"Clean", b"Clear", 1))
    sheet = drawn(signed)
    assert (sheet.mark, "missing or damaged" in sheet.reasons[0]) == (Mark.DRAFT, True)


def test_in_a_demonstration_every_piece_says_so_and_elsewhere_its_sign_offs_do_not_count(tmp_path):
    copy = SignedCopy(tmp_path / "ward", is_demo=True)
    copy.sign()
    for kind, paper, pieces in (("poster", "A4", 1), ("step-cards", "A4", 4), ("pocket-checklist", "A4", 1)):
        sheet = drawn(copy, kind=kind, paper=paper)
        assert sheet.mark is Mark.DEMONSTRATION
        page = PdfReader(sheet.path).pages[0].extract_text()
        said = " ".join(page.split())
        assert said.count("Demonstration. Not for clinical use.") >= pieces, kind
        assert said.count("DEMO") >= (7 if kind == "pocket-checklist" else pieces), kind
        assert "DRAFT" not in said
    copy.replace("content/library.yaml", "demo: yes\n", "")
    sheet = drawn(copy)
    assert sheet.mark is Mark.DRAFT
    assert "it was made in a demonstration" in " ".join(sheet.reasons)


def test_a_code_that_stands_for_other_content_is_not_printed_again(signed):
    project = signed.project
    protocol = project.library.protocols["clean-hands"]
    own = project.code(protocol)
    first = project.sign_offs.ledger.records[0]
    other = replace(first, content="f" * 64)
    taken = replace(project.sign_offs.ledger, records=(other,))
    again = replace(project, sign_offs=replace(project.sign_offs, ledger=taken))
    assert first.code == own
    assert again.code(protocol) != own
    assert len(again.code(protocol)) == 4


def test_what_may_not_be_signed_is_refused_with_reason_and_cure(signed):
    def objections(locale=None, **who):
        return [(str(each), each.cure) for each in signed.proposal(locale, **who).objections]

    assert objections() == []
    ((reason, cure),) = objections(by="icn")
    assert (reason, cure) == (
        "icn writes P3, and nobody signs their own work.",
        "These may sign: ward-lead, ipc-doctor.",
    )
    assert any("second person" in reason for reason, _ in objections("fr"))
    assert any("bn is in work" in reason for reason, _ in objections("bn"))
    assert any("Review overdue" in reason for reason, _ in objections(on=DAY + timedelta(days=400)))
    signed.replace(PROTOCOL, "agent: rub", "agent: wash")
    assert objections()
    signed.replace("content/people.yaml", "checks: [ar, ", "checks: [")
    assert any("no role of that name checks ar" in reason for reason, _ in objections("ar"))


def test_whoever_translated_does_not_check(signed):
    made = signed.check_off("fr", by="language-lead")
    assert made.marked == 0
    assert {why for _, why in made.left} == {"was translated by the same role"}


def test_what_was_signed_can_be_read_again_by_its_hash(signed):
    record = signed.project.sign_offs.of("P3").order
    data = path_of(signed.folder / "content", record.binds).read_bytes()
    assert b"Rings, watch and sleeves" in data
    binding = signed.proposal().bindings[0]
    assert data == binding.data() == canonical_json(binding.as_json()) + b"\n"
    assert record.content == binding.content_hash


def test_lesser_findings_of_the_sheet_stand_against_release_until_they_are_accepted(signed, monkeypatch):
    from signage.ground.problem import Problem, Severity
    from signage.produce import making

    def one(project, request, sheet, mark):
        return (Problem("SH-9", "x", Severity.S2, "something lesser", protocol="clean-hands", locale="en"),)

    monkeypatch.setattr(making, "lesser_findings_of", one)
    sheet = drawn(signed)
    assert (sheet.mark, sheet.reasons) == (Mark.DRAFT, ("SH-9 something lesser",))
    monkeypatch.setattr(making, "excuse", lambda _found, waivers, today: excuse((), waivers, today))
    assert drawn(signed).mark is Mark.NONE


def test_what_would_not_count_is_not_written(signed):
    """A role with a key that forgets it would believe that it has signed, or withdrawn."""
    key = make_key(signed.folder / "key.pem")
    signed.replace("content/people.yaml", "initials: WL\n", f"initials: WL\n    public-key: {key}\n")
    project = signed.project
    role, protocol = project.library.people["ward-lead"], project.library.protocols["clean-hands"]
    before = (signed.folder / "content/approvals.jsonl").read_bytes()
    with pytest.raises(RefusedError, match="--key FILE"):
        signed.sign()
    with pytest.raises(RefusedError, match="would not count"):
        withdraw(project, protocol, None, role, "An outbreak.", DAY)
    assert (signed.folder / "content/approvals.jsonl").read_bytes() == before
