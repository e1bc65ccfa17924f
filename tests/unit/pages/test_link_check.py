import pytest
from code_samples import payloads_of
from demo import sheet
from site_samples import LANGUAGES, site

from signage.pages.link_check import Payload, link_problems

BASE = "http://lantern-bay.internal:8080"
FILES = {
    "index.html": b"",
    "ar/p1/index.html": b'<section id="take-off">',
    "ar/p1/apron-off/index.html": b"",
}


def problems(text):
    return list(link_problems([Payload(text, "poster", "ar")], FILES, f"{BASE}/"))


@pytest.mark.parametrize(
    "path", ["/", "/ar/p1/?r=K7M2", "/ar/p1/apron-off/?r=K7M2", "/ar/p1/#take-off", "/ar/p1/?r=K7M2#take-off"]
)
def test_codes_with_a_page_are_silent(path):
    assert problems(BASE + path) == []


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        (f"{BASE}/ar/p1/apron-of/?r=K7M2", "ar/p1/apron-of/index.html"),
        (f"{BASE}/fr/p1/?r=K7M2", "fr/p1/index.html"),
        (f"{BASE}/ar/p1/#put-on", "#put-on"),
        (f"{BASE}/ar/p1?r=K7M2", "slash"),
        ("http://elsewhere.internal/ar/p1/", "training address"),
        (f"{BASE}0/ar/p1/", "training address"),
        (f"{BASE}/../ar/p1/apron-off/", "no"),
    ],
)
def test_a_code_without_its_page_is_named_with_its_sheet_and_language(text, reason):
    (problem,) = problems(text)
    assert reason in problem.message
    assert (problem.code, problem.locale, problem.sheet) == ("PG-2", "ar", "poster")


@pytest.mark.parametrize("tag", LANGUAGES)
def test_every_code_of_the_demo_leads_to_a_page(tag):
    sheets = [
        sheet("step-cards", tag, paper="A6"),
        sheet("poster", tag, "put-on"),
        sheet("poster", tag, "take-off"),
        sheet("pocket-checklist", tag, paper="A4"),
    ]
    payloads = list(payloads_of(sheets))
    assert len(payloads) >= 42 + 3
    assert list(link_problems(payloads, site().files, BASE)) == []


def test_a_site_without_one_step_is_found_out():
    files = dict(site().files)
    del files["en/p1/hood-off/index.html"]
    payloads = list(payloads_of([sheet("step-cards", "en", paper="A6")]))
    assert [problem.message for problem in link_problems(payloads, files, BASE)] != []
