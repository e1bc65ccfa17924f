"""With scripts off, and from a memory stick: all words, pictures and links are there."""

from dataclasses import replace
from datetime import datetime
from urllib.parse import unquote, urlsplit

import pytest
from demo import sheet
from outside_readers import outside
from site_samples import LANGUAGES, page_context


@pytest.fixture
def plain(browser, host):
    context = browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844})
    page = context.new_page()
    page.open_path = lambda path: page.goto(f"{host}/{path}")
    yield page
    context.close()


@pytest.mark.parametrize("tag", LANGUAGES)
def test_a_step_is_whole_without_scripts(plain, tag):
    plain.open_path(f"{tag}/p1/wash-hands/?r=AAAA")
    context = page_context(tag)
    step = next(step for step in context.protocol.steps if step.id == "wash-hands")
    assert plain.get_by_text(context.step_headline(step)).first.is_visible()
    assert plain.locator(".hero svg.picture").is_visible()
    assert not plain.locator(".timer").is_visible()
    assert not plain.locator("[data-read]").is_visible()
    assert plain.locator("details.menu:visible").count() == 1  # languages need no script
    plain.locator("a[rel=next]").click()
    assert "/stand-on-mat/" in plain.url


def test_exercises_say_what_to_do_and_show_the_answer_without_scripts(plain):
    plain.open_path("en/practice/p1/order-take-off-1/")
    assert plain.get_by_text("Use cards on paper instead.").is_visible()
    assert not plain.get_by_role("button").filter(has_text="Check").is_visible()
    plain.get_by_text("Show the answer").click()
    assert plain.locator(".answer li").first.is_visible()
    plain.open_path("en/practice/p1/meaning-take-off/")
    assert plain.locator("button").count() == plain.locator("header button").count()
    plain.get_by_text("Show the answer").first.click()
    assert plain.locator(".answer p").first.is_visible()


def test_whether_a_sheet_is_current_can_be_compared_by_eye(plain):
    plain.open_path("en/is-current/p1/")
    assert page_context("en").revision in plain.locator(".notice").first.inner_text()
    assert not plain.locator("form").is_visible()
    assert plain.get_by_text("Nobody has signed this sheet.").is_visible()


def test_the_site_on_a_memory_stick(browser, folder):
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page = context.new_page()
    said, asked = [], []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("request", lambda request: asked.append(request.url))
    page.goto((folder / "index.html").as_uri())
    page.get_by_role("link", name="አማርኛ").click()
    page.get_by_role("link", name="P1").first.click()
    page.locator("a.first.go").last.click()
    page.wait_for_url("**/to-dirty-side/index.html")
    page.keyboard.press("ArrowRight")
    page.wait_for_url("**/rub-outer-first/index.html")
    page.evaluate("document.fonts.ready")
    states = "[...document.fonts].map(font => [font.family, font.status])"
    assert ["signage-ethi", "loaded"] in page.evaluate(states)
    assert "error" not in dict(page.evaluate(states)).values()
    page.locator(".up").click()
    page.wait_for_url("**/am/p1/index.html")
    page.wait_for_function("[...document.images].slice(0, 3).every(image => image.naturalWidth > 0)")
    page.goto((folder / "am/practice/p1/order-take-off-2/index.html").as_uri())
    page.locator("[data-judge]").click()
    assert page.locator("[data-answer]").is_visible()
    assert said == []
    assert all(url.startswith(("file:", "data:")) for url in asked)
    context.close()


@pytest.mark.parametrize(("tag", "number"), [("en", 22), ("ar", 20), ("hi", 36), ("am", 41)])
def test_a_code_scanned_from_a_printed_card_opens_its_page(visit, folder, tag, number):
    reader = outside("zxingcpp")
    from io import BytesIO

    from PIL import Image

    from signage.paint.pdf.document import paint_pdf
    from signage.paint.png import paint_png

    cards = sheet("step-cards", tag, paper="A6")
    card = replace(cards, pages=cards.pages[number - 1 : number])
    picture = Image.open(BytesIO(paint_png(paint_pdf(card), 200)[0]))
    (code,) = reader.read_barcodes(picture)
    parts = urlsplit(code.text)
    path = unquote(parts.path).removeprefix("/")
    context = page_context(tag)
    step = context.protocol.steps[number - 1]
    visit.page.clock.set_fixed_time(datetime(2026, 11, 26, 12))  # noqa: DTZ001 - the phone's own clock
    page = visit.open(f"{path}?{parts.query}")
    assert page.locator("html").get_attribute("lang") == tag
    assert page.locator("h1").inner_text() == context.step_headline(step)
    draft = page_context(tag).words.fixed("page-is-draft")  # the code is the right one, and nobody has signed
    assert page.locator("[data-answer]").inner_text() == draft
    assert page.locator("[data-answer]").get_attribute("class") == "notice wrong"
    stick = visit.page.context.new_page()
    stick.goto(f"{(folder / path / 'index.html').as_uri()}?{parts.query}")
    assert stick.locator("h1").inner_text() == context.step_headline(step)
    stick.close()


def test_another_language_of_the_same_step_keeps_the_code_that_was_scanned(visit):
    page = visit.open("ar/p1/apron-off/?r=AAAA")
    page.locator("details.menu summary").first.click()
    page.get_by_role("link", name="English").click()
    page.wait_for_url("**/en/p1/apron-off/**")
    assert "cannot tell" in page.locator("[data-answer]").inner_text()
