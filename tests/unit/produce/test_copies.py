import io
from dataclasses import replace
from datetime import date

import pytest
from outside_readers import outside
from signing import SignedCopy

from signage.compose.sheet_kinds import read_sheet_kinds
from signage.control.register.store import open_register
from signage.paint.png import paint_png
from signage.produce.copies import numbered_jobs
from signage.produce.draw import draw_all, jobs_for
from signage.produce.drawn_files import clear_outdated, read_list
from signage.produce.kept import KeptResults
from signage.produce.release import Releases
from signage.produce.requests import Wanted, requests_for

PdfReader = outside("pypdf").PdfReader
zxingcpp = outside("zxingcpp")

DAY = date(2026, 11, 26)
WANTED = Wanted(protocols=("clean-hands",), locales=("en", "ar"), kinds=("pocket-checklist",), papers=("A4",))


@pytest.fixture(scope="module")
def english_only(tmp_path_factory):
    """A copy of the demo for use, signed in English and not in Arabic."""
    copy = SignedCopy(tmp_path_factory.mktemp("signed") / "ward")
    copy.sign()
    return copy.project


@pytest.fixture(scope="module")
def drawn(english_only, tmp_path_factory):
    output = tmp_path_factory.mktemp("copies")
    results = KeptResults(english_only)
    jobs = jobs_for(Releases(english_only, DAY, results), requests_for(english_only, WANTED))
    with open_register(output / "register.db") as register:
        jobs = numbered_jobs(results, jobs, 2, register, DAY, workers=1)
        made = list(draw_all(english_only, jobs, output, results, workers=1))
        return output, made, register.states()


def test_released_sheets_get_numbers_and_drafts_none(english_only, drawn):
    _, (english, arabic), states = drawn
    assert [state.copy.number for state in states] == list(english.request.copies)
    assert {(state.copy.subject, state.copy.locale, state.state) for state in states} == {
        ("clean-hands", "en", "printed")
    }
    protocol = english_only.library.protocols["clean-hands"]
    assert {state.copy.hash for state in states} == {english_only.content_hash(protocol, "en")}
    assert (english.as_json()["copies"], english.as_json()["numbers"]) == (2, list(english.request.copies))
    assert (arabic.as_json()["copies"], arabic.as_json()["numbers"], arabic.mark) == (1, [], "draft")


def test_each_copy_says_its_number_in_its_text_and_in_its_code(drawn):
    _, (english, _), _ = drawn
    data = english.path.read_bytes()
    pages = PdfReader(io.BytesIO(data)).pages
    numbers = english.request.copies
    assert len(pages) == len(numbers) == english.pages
    assert english.path.stem.endswith(f"-{numbers[0]}-to-{numbers[1]}")
    for page, picture, number in zip(pages, paint_png(data, 150), numbers, strict=True):
        said = page.extract_text()
        assert number in said
        assert not [other for other in numbers if other != number and other in said]
        (code,) = zxingcpp.read_barcodes(_pixels(picture))
        assert code.text.endswith(f"?r={english.revision}&c={number.replace('-', '')}")


def _pixels(picture):
    from PIL import Image

    return Image.open(io.BytesIO(picture)).convert("L")


def test_a_later_run_leaves_numbered_copies_to_their_printer(drawn):
    output, made, _ = drawn
    kinds = read_sheet_kinds()
    clear_outdated(output, WANTED, made, kinds)
    assert clear_outdated(output, replace(WANTED, locales=("en",)), [], kinds).removed == ()
    assert [file.copies for file in read_list(output) if file.locale == "en"] == [
        " ".join(made[0].request.copies)
    ]
