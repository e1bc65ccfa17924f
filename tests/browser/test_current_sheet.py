"""Whether a sheet is current: every state, on the day and later."""

from dataclasses import replace
from datetime import datetime

import pytest
from demo import project
from serving import serving
from site_samples import MADE_ON, UNEXAMINED, page_context, publication

from signage.pages.protocol_pages import last_day
from signage.pages.publication import PageContext
from signage.pages.site import build_site
from signage.produce.publish import write_site

CODE = page_context("en").revision
REVIEW = page_context("en").protocol.review_by


def answer(visit, path, day):
    visit.page.clock.set_fixed_time(datetime(day.year, day.month, day.day, 12))  # noqa: DTZ001 - the phone's own clock
    place = visit.open(path).locator("[data-answer]")
    return place.inner_text() if place.is_visible() else None


PLACES = ["en/is-current/p1/", "en/p1/", "en/p1/apron-off/"]


@pytest.mark.parametrize("path", PLACES)
def test_the_right_code_is_current_and_the_day_is_named(visit, path):
    assert answer(visit, f"{path}?r={CODE}", MADE_ON) == "Current on \u206826 November 2026\u2069."


@pytest.mark.parametrize("path", PLACES)
def test_another_code_cannot_be_told(visit, path):
    assert "cannot tell" in answer(visit, f"{path}?r=AAAA", MADE_ON)


def test_a_sheet_whose_words_alone_were_changed_is_told_so(visit):
    steps, words = CODE.split("-")
    assert "The steps are the same" in answer(visit, f"en/p1/?r={steps}-{words[::-1]}", MADE_ON)
    assert "cannot tell" in answer(visit, f"en/p1/?r={steps[::-1]}-{words}", MADE_ON)
    assert "cannot tell" in answer(visit, f"en/p1/?r={steps}", MADE_ON)


def test_without_a_code_nothing_is_claimed(visit):
    assert answer(visit, "en/p1/apron-off/", MADE_ON) is None


def test_after_the_review_date_nothing_is_current(visit):
    path = f"en/p1/?r={CODE}"
    assert "Current" in answer(visit, path, REVIEW)
    assert "cannot tell" in answer(visit, path, REVIEW.replace(year=REVIEW.year + 1))


def test_a_phone_whose_date_is_wrong_cannot_tell(visit):
    assert "cannot tell" in answer(visit, f"en/p1/?r={CODE}", MADE_ON.replace(year=2020))


@pytest.mark.parametrize("typed", [CODE, CODE.lower(), f" r1 · {CODE} "])
def test_a_code_can_be_typed_as_it_stands_on_the_sheet(visit, typed):
    visit.page.clock.set_fixed_time(datetime(2026, 11, 26, 12))  # noqa: DTZ001 - the phone's own clock
    page = visit.open("en/is-current/p1/")
    page.get_by_label("Code on the sheet").type(typed)
    page.keyboard.press("Enter")
    assert page.locator("[data-answer]").inner_text().startswith("Current on")
    assert "?" not in page.url


def test_a_sheet_of_an_earlier_revision_is_replaced(browser, tmp_path):
    made = publication()
    earlier = {"layered-protection": ("OLD2", "OLD3")}
    older = replace(made, words={"en": made.words["en"]}, earlier_revisions=earlier)
    write_site(tmp_path, build_site(older, UNEXAMINED).files)
    with serving(tmp_path) as port:
        page = browser.new_page()
        page.goto(f"http://127.0.0.1:{port}/en/p1/?r=OLD3")
        assert page.locator("[data-answer]").inner_text().startswith("Replaced. Do not use")
        page.close()


def test_the_policy_may_let_pages_age_sooner():
    from signage.model.library import PolicyValue

    library = project().library
    context = PageContext(publication(), library.protocols["layered-protection"], publication().words["en"])
    value = PolicyValue(id="training-pages-days", value=30, source="local", owner="nurse")
    aged = replace(library, policy={**library.policy, value.id: value})
    assert last_day(library, context.protocol, MADE_ON) == REVIEW
    assert last_day(aged, context.protocol, MADE_ON).isoformat() == "2026-12-26"
