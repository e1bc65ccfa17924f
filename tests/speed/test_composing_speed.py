"""How long sheets take to compose; run on request with ``pytest tests/speed -s``.

The floor is what a composer does at the least, by the same two libraries: each text on each page is shaped
once by HarfBuzz and its line ends are found once by ICU. Everything else, such as the search for a
plan, the fit ladder, pictures and codes, is told as a multiple of it. Both are measured in one run, so that
the multiple says the same on every machine.
"""

from collections import defaultdict
from time import process_time

import demo
import pytest
import uharfbuzz
from icu4py.breakers import LineBreaker

from signage.drawing.marks import texts_of
from signage.produce.requests import Wanted, compose_request, requests_for
from signage.project import open_project
from signage.text import paragraph, shape
from signage.text.fonts import face

MOST_OF_FLOOR = 30
"""It was 17 when this was written, and 50 before lines were kept by the widths that lead to them."""


def without_memory():
    paragraph.texts_in.cache_clear()
    shape._stretches_in.cache_clear()


def composed(project, protocol):
    """Seconds and sheets by kind and paper, nothing remembered at the start but pictures and words."""
    seconds, sheets = defaultdict(float), defaultdict(list)
    without_memory()
    for request in requests_for(project, Wanted(protocols=(protocol,), locales=demo.LANGUAGES)):
        start = process_time()
        sheet = compose_request(project, request)
        seconds[request.kind, request.paper] += process_time() - start
        sheets[request.kind, request.paper].append(sheet)
    return seconds, sheets


def floor_of(sheets):
    """Seconds to shape every text on every page and to find where its lines may end."""
    texts = [
        (mark.text, mark.language, mark.lines[0].runs[0].font)
        for sheet in sheets
        for page in sheet.pages
        for mark, _ in texts_of(page)
        if mark.lines[0].runs
    ]
    start = process_time()
    for text, language, font in texts:
        buffer = uharfbuzz.Buffer()
        buffer.add_str(text)
        buffer.guess_segment_properties()
        uharfbuzz.shape(face(font).font, buffer)
        assert buffer.glyph_infos
        assert list(LineBreaker(text, language))
    return process_time() - start


@pytest.mark.parametrize("protocol", ["layered-protection", "clean-hands"])
def test_composing_takes_a_small_multiple_of_shaping_its_texts(protocol):
    project = open_project(demo.ROOT / "content", demo.ROOT / "locales")
    composed(project, protocol)  # words, pictures and fonts are opened
    seconds, sheets = composed(project, protocol)
    floor = min(floor_of([each for kind in sheets.values() for each in kind]) for _ in range(3))
    print()  # noqa: T201 - what is asked for
    for kind, taken in seconds.items():
        pages = sum(len(sheet.pages) for sheet in sheets[kind])
        print(f"{' '.join(kind)}: {1000 * taken / pages:.1f} ms a page, {pages} pages")  # noqa: T201 - as above
    multiple = sum(seconds.values()) / floor
    print(f"{protocol}: {sum(seconds.values()):.2f} s, {multiple:.0f} times the floor of {floor:.3f} s")  # noqa: T201 - as above
    assert multiple < MOST_OF_FLOOR
