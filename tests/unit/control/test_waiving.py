"""Waivers of findings of words and sheets: one finding, one language, until a day."""

from dataclasses import replace
from datetime import date

from signage.control.waiving import beyond_rehearsal, excuse
from signage.ground.problem import Problem, Severity
from signage.model.waiver import Waiver

TODAY = date(2027, 3, 1)
FRENCH = Problem("WD-41", "no-approved-verb", Severity.S2, "m", protocol="off", step="rub", locale="fr")
ARABIC = replace(FRENCH, locale="ar")
GRAVE = replace(FRENCH, code="WD-40", severity=Severity.S1)
SHEETS = tuple(
    Problem("SH-9", "n", Severity.S2, "m", protocol="off", locale=tag, sheet=f"{kind} A3")
    for tag in ("en", "fr")
    for kind in ("poster take-off", "poster take-off-again", "step-cards")
)


def waiver(**changes):
    given = {"code": "WD-41", "protocol": "off", "step": "rub", "locale": "fr", **changes}
    return Waiver(**{"reason": "r", "role": "ward lead", "expires": TODAY, **given})


def test_words_are_excused_in_the_language_that_the_waiver_names_and_in_no_other():
    result = excuse([FRENCH, ARABIC], [waiver()], TODAY)
    assert result.standing == (ARABIC,)
    assert [(problem.locale, by.role) for problem, by in result.waived] == [("fr", "ward lead")]
    assert result.faults == ()
    assert excuse([FRENCH, ARABIC], [waiver(locale=None)], TODAY).standing == (FRENCH, ARABIC)


def test_a_sheet_is_excused_in_all_languages_or_in_one_and_by_the_whole_words_of_its_name():
    everywhere = waiver(code="SH-9", step=None, locale=None, sheet="poster take-off")
    left = excuse(SHEETS, [everywhere], TODAY).standing
    assert {problem.sheet for problem in left} == {"poster take-off-again A3", "step-cards A3"}
    in_french = excuse(SHEETS, [replace(everywhere, locale="fr", sheet=None)], TODAY).standing
    assert {problem.locale for problem in in_french} == {"en"}


def test_a_waiver_that_ran_out_or_is_of_a_grave_finding_or_fits_nothing_is_a_fault_and_excuses_nothing():
    faulty = [
        waiver(expires=date(2027, 2, 28)),
        waiver(code="WD-40"),
        waiver(step="rinse"),
    ]
    result = excuse([FRENCH, GRAVE], faulty, TODAY)
    assert result.standing == (FRENCH, GRAVE)
    assert [(fault.code, fault.locale) for fault in result.faults] == [
        ("WV-1", "fr"),
        ("WV-2", "fr"),
        ("WV-3", "fr"),
    ]
    assert "2027-02-28" in result.faults[0].message


def test_findings_of_the_rehearsal_are_left_to_it():
    assert beyond_rehearsal([waiver(), waiver(code="HH-2")]) == (waiver(),)
