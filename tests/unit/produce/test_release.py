"""The facts behind a decision: findings of the content count for the protocols they concern, no others."""

import shutil
from dataclasses import replace
from datetime import date

import demo

from signage.model.mark import Mark
from signage.model.waiver import Waiver
from signage.produce.release import Releases

DAY = date(2026, 11, 28)
P1 = "layered-protection"


def releases(day=DAY, **values):
    own = demo.project()
    return Releases(replace(own, library=replace(own.library, **values)), day)


def codes(release):
    return {problem.code for problem in release.facts.problems}


def test_a_review_that_is_overdue_stands_among_the_reasons_of_its_protocol_only():
    library = demo.project().library
    overdue = replace(library.protocols[P1], review_by=date(2020, 6, 30))
    made = releases(protocols={**library.protocols, P1: overdue})
    before = codes(releases().of(P1, "en"))
    (found,) = codes(made.of(P1, "en")) - before
    assert any(found in str(reason) for reason in made.of(P1, "en").decision.reasons)
    assert found not in codes(made.of("chair-turnaround", "en"))
    assert made.of(P1, "en").decision.mark is Mark.DRAFT


def test_a_waiver_lifts_a_finding_of_the_content_until_its_day():
    library = demo.project().library
    overdue = replace(library.protocols[P1], review_by=date(2020, 6, 30))
    protocols = {**library.protocols, P1: overdue}
    (found,) = codes(releases(protocols=protocols).of(P1, "en")) - codes(releases().of(P1, "en"))
    waiver = Waiver(
        code=found,
        protocol=P1,
        step=None,
        reason="Review is under way.",
        role="nurse",
        expires=date(2026, 12, 31),
    )
    excused = releases(protocols=protocols, waivers=(waiver,))
    assert found not in codes(excused.of(P1, "en"))
    later = releases(date(2027, 1, 1), protocols=protocols, waivers=(waiver,))
    assert found in codes(later.of(P1, "en"))


def test_a_file_that_cannot_be_read_refuses_its_language_and_no_other(tmp_path):
    own = demo.project()
    locales = tmp_path / "locales"
    shutil.copytree(own.locales, locales)
    (locales / "fr" / "LC_MESSAGES" / "content.po").write_bytes(b"\xff\xfem\x00s\x00g\x00")
    made = Releases(replace(own, locales=locales), DAY)
    decision = made.of(P1, "fr").decision
    assert (decision.mark, decision.on_request) == (Mark.REFUSED, Mark.REFUSED)
    assert "content.po" in str(decision.reasons[0])
    assert made.of(P1, "ar").decision.mark is Mark.DRAFT


def test_a_lost_placeholder_is_told_at_its_entry(tmp_path):
    own = demo.project()
    locales = tmp_path / "locales"
    shutil.copytree(own.locales, locales)
    catalogue = locales / "fr" / "LC_MESSAGES" / "content.po"
    text = catalogue.read_text(encoding="utf-8")
    entry = text.index('msgctxt "chair-turnaround/dirty-chair-wet/text"')
    start = text.index("{time}", text.index("msgstr", entry))
    catalogue.write_text(text[:start] + text[start + len("{time}") :], encoding="utf-8")
    decision = Releases(replace(own, locales=locales), DAY).of("chair-turnaround", "fr").decision
    assert (decision.mark, decision.on_request) == (Mark.REFUSED, Mark.PROOF)
    line = text[:entry].count("\n") + 1
    (reason,) = map(str, decision.reasons)
    assert reason.startswith(f"{catalogue.as_posix()}:{line}: WD-6")
    assert "{time} is missing" in reason
