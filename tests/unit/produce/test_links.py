"""Every code of every sheet leads to a page of the site, without drawing either."""

import shutil
from dataclasses import replace
from datetime import date

import pytest
from code_samples import payloads_of
from demo import LANGUAGES, project, sheet

from signage.produce.links import payloads_for, training_problems
from signage.produce.requests import Wanted, requests_for
from signage.text.font_set import BUNDLED_FONTS
from signage.words.coverage import coverage_problems

DAY = date(2026, 11, 28)


def changed(**values):
    """The demo with other values of its library."""
    demo = project()
    return replace(demo, library=replace(demo.library, **values))


def test_the_demo_has_a_page_for_every_code_in_every_language():
    requests = requests_for(project(), Wanted())
    payloads = list(payloads_for(project(), requests))
    steps = sum(len(protocol.steps) for protocol in project().library.protocols.values())
    assert len(payloads) == len(LANGUAGES) * (steps + len(project().library.protocols))
    assert list(training_problems(project(), requests, DAY)) == []


@pytest.mark.parametrize("tag", ["ar", "am"])
def test_the_codes_are_those_that_sheets_really_carry(tag):
    sheets = [
        sheet("step-cards", tag, paper="A6"),
        sheet("step-cards", tag, paper="A4"),
        sheet("poster", tag, "put-on"),
        sheet("poster", tag, "take-off"),
        sheet("pocket-checklist", tag, paper="A4"),
    ]
    requests = requests_for(project(), Wanted(protocols=("layered-protection",), locales=(tag,)))
    drawn = {payload.text for payload in payloads_of(sheets)}
    assert drawn == {payload.text for payload in payloads_for(project(), requests)}


def test_an_address_that_no_phone_reaches_is_one_warning_at_its_line():
    (problem,) = training_problems(changed(training_address="http://localhost:8080"), (), DAY)
    assert problem.code == "PG-1"
    assert problem.place.path.endswith("library.yaml")
    assert problem.place.line > 1


def test_codes_without_pages_are_errors_with_sheet_and_language():
    """A language in use whose sheets are asked for, and whose pages are refused."""
    demo = project()
    requests = requests_for(demo, Wanted(protocols=("layered-protection",), locales=("ar",)))
    from signage.model.library import LocaleState

    locales = {
        tag: replace(locale, state=LocaleState.IN_WORK) if tag == "ar" else locale
        for tag, locale in demo.library.locales.items()
    }
    problems = list(training_problems(changed(locales=locales), requests, DAY))
    assert {(problem.code, problem.locale) for problem in problems} == {("PG-2", "ar")}
    assert len(problems) == len(demo.library.protocols["layered-protection"].steps) + 1
    assert {problem.sheet for problem in problems} == {"step-cards", "poster, pocket-checklist"}


def test_where_no_language_has_pages_every_code_is_dead():
    demo = project()
    from signage.model.library import LocaleState

    requests = requests_for(demo, Wanted(protocols=("clean-hands",), locales=("en",)))
    locales = {
        tag: replace(locale, state=LocaleState.IN_WORK) for tag, locale in demo.library.locales.items()
    }
    problems = list(training_problems(changed(locales=locales), requests, DAY))
    assert len(problems) == len(demo.library.protocols["clean-hands"].steps) + 1


def test_asking_for_nothing_finds_nothing():
    assert list(training_problems(project(), (), DAY)) == []


def test_a_broken_placeholder_of_one_language_hides_nothing_of_the_others(tmp_path):
    demo = project()
    locales = tmp_path / "locales"
    shutil.copytree(demo.locales, locales)
    catalogue = locales / "fr" / "LC_MESSAGES" / "content.po"
    text = catalogue.read_text(encoding="utf-8")
    assert 'msgstr "Attendre {time}"' in text
    catalogue.write_text(
        text.replace('msgstr "Attendre {time}"', 'msgstr "Attendre {bin}"'), encoding="utf-8"
    )
    broken = replace(demo, locales=locales)
    words = list(coverage_problems(broken.library, broken.messages, locales, BUNDLED_FONTS))
    assert {(problem.code, problem.locale) for problem in words if problem.locale == "fr"} == {("WD-6", "fr")}
    assert list(training_problems(broken, requests_for(broken, Wanted(locales=("en",))), DAY)) == []
    assert list(training_problems(broken, requests_for(broken, Wanted(locales=("en", "fr"))), DAY))
