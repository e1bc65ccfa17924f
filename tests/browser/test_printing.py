"""The whole protocol on paper, as the browser prints it."""

from itertools import pairwise

import pytest
from outside_readers import outside
from site_samples import page_context


def test_print_is_light_and_leaves_out_what_paper_cannot_do(browser, host):
    context = browser.new_context(color_scheme="dark")
    page = context.new_page()
    page.goto(f"{host}/en/full-view/p1/?look=dark")
    page.emulate_media(media="print")
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(20, 32, 44)"
    assert not page.locator(".top").is_visible()
    assert page.locator(".draft").is_visible()
    assert page.locator(".whole img").count() == 42
    context.close()


def test_what_can_run_over_a_page_is_no_grid_on_paper(browser, host):
    """Rows of a grid may overlap where a page ends; which do depends on the fonts of the device."""
    page = browser.new_page()
    page.goto(f"{host}/en/full-view/p1/")
    page.emulate_media(media="print")
    tall = "[...document.querySelectorAll('main, main *')].filter(each => each.offsetHeight > 400)"
    assert set(page.evaluate(f"{tall}.map(each => getComputedStyle(each).display)")) <= {"block"}
    page.close()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_printed_steps_stand_whole_and_clear_of_each_other(browser, host, paper):
    reader = outside("pypdfium2")
    page = browser.new_page()
    page.goto(f"{host}/en/full-view/p1/")
    document = reader.PdfDocument(page.pdf(format=paper))
    page.close()
    words = {page_context("en").step_headline(step) for step in page_context("en").protocol.steps}
    words -= {"Check the seal", "Stand up"}  # other sentences say it too
    found = 0
    for sheet in document:
        text, heights = sheet.get_textpage(), []
        for headline in words:
            search = text.search(headline, match_case=True)
            while (place := search.get_next()) is not None:
                heights.append(text.get_charbox(place[0])[1])
        found += len(heights)
        gaps = [below - above for above, below in pairwise(sorted(heights))]
        assert min(gaps, default=99) > 25, (paper, gaps)  # points; a step is higher than that
    assert found == 40
