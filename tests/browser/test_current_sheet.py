"""Whether a sheet is current: every state, on the day and later."""

from dataclasses import replace
from datetime import date, datetime

import pytest
from demo import project
from serving import serving
from site_samples import MADE_ON, UNEXAMINED, page_context, publication

from signage.model.current_sheet import CurrentSheet
from signage.model.sign_off import SignedBy, SignOff
from signage.pages.protocol_pages import last_day
from signage.pages.publication import KnownCopies, PageContext
from signage.pages.site import build_site
from signage.produce.publish import write_site

CODE = page_context("en").revision
REVIEW = page_context("en").protocol.review_by


BY = SignOff("ward-lead", date(2026, 11, 20))
COPY, OTHER, GONE = "LB-0001-4", "LB-0002-2", "LB-0003-Z"
KEY = ("layered-protection", "en")
PLACES = ["en/is-current/p1/", "en/p1/", "en/p1/apron-off/"]


def signed(**changes):
    """The pages of one protocol in English, signed, with what a register knows of copies."""
    made = publication()
    values = {
        "words": {"en": made.words["en"]},
        "approved": {KEY: SignedBy(BY, BY)},
        "left_out": frozenset((name, "en") for name in made.library.protocols if name != KEY[0]),
        "current": {KEY: CurrentSheet(*KEY, "h", CODE, date(2026, 11, 20), may_be_mounted=True)},
        "copies": {KEY: KnownCopies((COPY,), (GONE,))},
        "earlier_revisions": {KEY[0]: ("AAAA-BBBB", "CCCC")},
    }
    return replace(made, **{**values, **changes})


@pytest.fixture(scope="module")
def sites(tmp_path_factory):
    withdrawn = {KEY: CurrentSheet(*KEY, "h", CODE, is_withdrawn=True)}
    made = {
        "signed": signed(),
        "draft": signed(approved={}, current={}),
        "withdrawn": signed(current=withdrawn),
    }
    folder = tmp_path_factory.mktemp("sites")
    for name, each in made.items():
        write_site(folder / name, build_site(each, UNEXAMINED).files)
    with serving(folder) as port:
        yield f"http://127.0.0.1:{port}"


@pytest.fixture(scope="module")
def phone(browser):
    page = browser.new_page(viewport={"width": 360, "height": 740})
    yield page
    page.close()


def judged(phone, site, path, day=MADE_ON):
    """The answer, whether it is green, and what is said of the two codes; None where nothing is claimed."""
    phone.clock.set_fixed_time(datetime(day.year, day.month, day.day, 12))  # noqa: DTZ001 - the phone's own clock
    phone.goto(f"{site}/{path}")
    answer = phone.locator("[data-answer]")
    if not answer.is_visible():
        return None
    return (
        answer.inner_text().translate(_ISOLATES),
        "right" in answer.get_attribute("class").split(),
        phone.locator("[data-codes]").inner_text().translate(_ISOLATES),
    )


_ISOLATES = dict.fromkeys(map(ord, "\u2060\u2066\u2068\u2069"))


def test_every_state_of_a_sheet_has_its_answer_and_only_one_is_green(sites, phone):
    plain = COPY.replace("-", "")
    steps, words = CODE.split("-")
    for site, query, begins, is_green in (
        ("signed", f"?r={CODE}", "Current on 26 November 2026.", True),
        ("signed", f"?r={CODE}&c={plain}", "Current on", True),
        ("signed", f"?r={CODE}&c={COPY.lower()}", "Current on", True),
        ("signed", f"?r={CODE}&c={OTHER}", f"Copy {OTHER} was not on the list", False),
        ("signed", f"?r={CODE}&c={GONE}", f"Copy {GONE} was taken down.", False),
        ("signed", "?r=AAAA-BBBB", f"Replaced by {CODE} since 20 November 2026. Do not use", False),
        ("signed", f"?r=AAAA-BBBB&c={GONE}", "Replaced by", False),
        ("signed", f"?r=CCCC-{words}", "Replaced by", False),
        ("signed", f"?r={steps}-{words[::-1]}", "The steps are the same", False),
        ("signed", f"?r={steps[::-1]}-{words}", "These pages cannot tell.", False),
        ("signed", f"?r={steps}", "These pages cannot tell.", False),
        ("draft", f"?r={CODE}", "Draft. Nobody has signed", False),
        ("draft", f"?r={CODE}&c={plain}", "Draft. Nobody has signed", False),
        ("draft", "?r=ZZZZ-ZZZZ", "These pages cannot tell.", False),
        ("withdrawn", f"?r={CODE}&c={plain}", "Withdrawn. Do not use", False),
        ("withdrawn", "?r=ZZZZ-ZZZZ", "Withdrawn. Do not use", False),
    ):
        for path in PLACES:
            said, right, _ = judged(phone, f"{sites}/{site}", f"{path}{query}")
            assert said.startswith(begins), (site, path, query, said)
            assert right is is_green, (site, path, query)


def test_the_printed_code_stands_beside_that_of_the_pages(sites, phone):
    path = f"en/p1/?r=AAAA-BBBB&c={COPY.replace('-', '')}"
    _, _, codes = judged(phone, f"{sites}/signed", path)
    assert codes == f"On your sheet: AAAA-BBBB · {COPY} — Code of these pages: {CODE}"


def test_without_a_code_nothing_is_claimed(sites, phone):
    assert judged(phone, f"{sites}/signed", "en/p1/apron-off/") is None


def test_old_pages_and_a_phone_whose_date_is_wrong_cannot_tell(sites, phone):
    path = f"en/p1/?r={CODE}"
    assert judged(phone, f"{sites}/signed", path, REVIEW)[1]
    for day in (REVIEW.replace(year=REVIEW.year + 1), MADE_ON.replace(year=2020)):
        said, right, _ = judged(phone, f"{sites}/signed", path, day)
        assert ("cannot tell" in said, right) == (True, False)


def test_a_code_can_be_typed_as_it_stands_on_the_sheet(sites, phone):
    for typed, begins in (
        (CODE, "Current on"),
        (CODE.lower(), "Current on"),
        (f" r1 · {CODE} ", "Current on"),
        (f"r1 · {CODE} · {COPY}", "Current on"),
        (f"{CODE} {GONE}", f"Copy {GONE} was taken down"),
    ):
        judged(phone, f"{sites}/signed", "en/is-current/p1/")
        phone.get_by_label("Code on the sheet").type(typed)
        phone.keyboard.press("Enter")
        said = phone.locator("[data-answer]").inner_text().translate(_ISOLATES)
        assert said.startswith(begins), typed
        assert "?" not in phone.url


def test_the_page_says_when_it_was_made_and_until_when_it_can_tell(sites, phone):
    for site, says_current in (("signed", True), ("draft", False), ("withdrawn", False)):
        judged(phone, f"{sites}/{site}", "en/is-current/p1/")
        said = phone.locator("main").inner_text().translate(_ISOLATES)
        assert "made on 26 November 2026" in said
        assert "After 31 May 2027 this page cannot tell any more." in said
        assert ("it was current on that day" in said) is says_current


def test_the_policy_may_let_pages_age_sooner():
    from signage.model.library import PolicyValue

    library = project().library
    context = PageContext(publication(), library.protocols["layered-protection"], publication().words["en"])
    value = PolicyValue(id="training-pages-days", value=30, source="local", owner="nurse")
    aged = replace(library, policy={**library.policy, value.id: value})
    assert last_day(library, context.protocol, MADE_ON) == REVIEW
    assert last_day(aged, context.protocol, MADE_ON).isoformat() == "2026-12-26"
