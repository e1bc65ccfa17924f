"""Looks, letters and controls of pages in four scripts, in a real browser."""

import pytest
from page_checks import SIDEWAYS
from site_samples import KINDS, LANGUAGES


@pytest.mark.parametrize("path", ["", "nowhere/at/all/"])
def test_pages_of_all_languages(phone, violations, path):
    page = phone.open(path)
    tags = page.eval_on_selector_all("main [lang]", "elements => elements.map(each => each.lang)")
    assert sorted(set(tags)) == sorted(LANGUAGES)
    assert violations(page) == []
    page.set_viewport_size({"width": 320, "height": 640})
    assert page.evaluate(SIDEWAYS) == 0
    if path:
        phone.said.clear()  # the browser reports the status 404 itself


@pytest.mark.parametrize("look", ["dark", "contrast"])
@pytest.mark.parametrize(
    "kind", ["overview", "critical-step", "timed-step", "ordering", "current", "mistake"]
)
def test_other_looks_keep_their_contrast(phone, violations, look, kind):
    joined = "&" if "?" in KINDS[kind] else "?"
    page = phone.open(f"en/{KINDS[kind]}{joined}look={look}")
    assert page.evaluate("document.documentElement.dataset.look") == look
    assert violations(page) == []


@pytest.mark.parametrize("tag", LANGUAGES)
def test_controls_are_large_enough_for_a_gloved_finger(phone, tag):
    for kind in ("overview", "timed-step", "ordering", "container", "current"):
        page = phone.open(f"{tag}/{KINDS[kind]}")
        small = page.evaluate(
            """() => [...document.querySelectorAll('a[href], button, summary, input')]
                .filter(each => !each.closest('.skip, [hidden], h3') && each.getClientRects().length)
                .map(each => [each.outerHTML.slice(0, 80), each.getBoundingClientRect()])
                .filter(([, box]) => box.width < 47.9 || box.height < 47.9)
                .map(([html]) => html)"""
        )
        assert small == [], kind


@pytest.mark.parametrize("tag", LANGUAGES)
def test_next_and_back_stay_in_sight_on_a_phone(phone, tag):
    page = phone.open(f"{tag}/p1/goggles-off/")
    for relation in ("next", "prev"):
        box = page.locator(f"a[rel={relation}]").bounding_box()
        assert box["y"] + box["height"] <= 844
    for part in ("h1", ".detail", ".hero figure"):
        box = page.locator(part).bounding_box()
        assert box["y"] + box["height"] <= page.locator(".going").bounding_box()["y"], part


def test_reading_runs_from_the_side_where_it_begins(phone):
    page = phone.open("ar/p1/goggles-off/")
    rail, figure = (page.locator(part).bounding_box() for part in (".hero .rail", ".hero figure"))
    assert rail["x"] > figure["x"]
    page = phone.open("en/p1/goggles-off/")
    rail, figure = (page.locator(part).bounding_box() for part in (".hero .rail", ".hero figure"))
    assert rail["x"] < figure["x"]


def test_letters_that_phones_lack_come_with_the_page(phone):
    page = phone.open("am/p1/goggles-off/")
    page.evaluate("document.fonts.ready")
    loaded = page.evaluate(
        "[...document.fonts].filter(font => font.status === 'loaded').map(font => font.family)"
    )
    assert "signage-ethi" in loaded


def strangers(page, script):
    """Letters of headlines that the browser draws with a font of another script: boxes, most likely."""
    session = page.context.new_cdp_session(page)
    session.send("DOM.enable")
    session.send("CSS.enable")
    root = session.send("DOM.getDocument")["root"]["nodeId"]
    found = 0
    for selector in ("h1", ".detail", ".going a"):
        node = session.send("DOM.querySelector", {"nodeId": root, "selector": selector})["nodeId"]
        fonts = session.send("CSS.getPlatformFontsForNode", {"nodeId": node})["fonts"]
        foreign = sum(font["glyphCount"] for font in fonts if script not in font["familyName"])
        text = page.locator(selector).first.inner_text()
        found += max(0, foreign - sum(character.isascii() for character in text))
    session.detach()
    return found


@pytest.mark.parametrize(("tag", "script"), [("hi", "Devanagari"), ("am", "Ethiopic")])
def test_letters_are_no_boxes_where_the_computer_lacks_the_script(phone, tag, script):
    page = phone.open(f"{tag}/p1/goggles-off/")
    page.evaluate("document.fonts.ready")
    page.wait_for_function("[...document.fonts].some(font => font.status === 'loaded')")
    page.wait_for_timeout(300)
    assert strangers(page, script) == 0


def test_the_device_decides_the_look_until_someone_chooses(browser, host):
    context = browser.new_context(color_scheme="dark", contrast="no-preference")
    page = context.new_page()
    page.goto(f"{host}/en/p1/goggles-off/")
    ground = "getComputedStyle(document.body).backgroundColor"
    assert page.evaluate(ground) == "rgb(13, 21, 29)"
    page.locator("details.menu summary").last.click()
    page.locator("[data-set-look=light]").click()
    assert page.evaluate(ground) == "rgb(255, 255, 255)"
    page.emulate_media(contrast="more")
    page.locator("[data-set-look=light]").click()
    assert page.evaluate("getComputedStyle(document.body).color") == "rgb(0, 0, 0)"
    context.close()


def test_a_chosen_look_goes_along_and_nothing_is_stored(phone):
    page = phone.open("en/p1/goggles-off/")
    page.locator("details.menu summary").last.click()
    page.locator("[data-set-look=dark]").click()
    page.locator("[data-size-step='1']").click()
    page.keyboard.press("Escape")
    page.locator("a[rel=next]").click()
    page.wait_for_url("**/rub-after-goggles/**")
    assert page.evaluate("({...document.documentElement.dataset}).look") == "dark"
    assert page.evaluate("document.documentElement.dataset.size") == "large"
    assert page.evaluate("localStorage.length + sessionStorage.length") == 0


def test_nothing_moves_for_people_who_want_it_still(browser, host):
    for motion, expected in (("reduce", "none"), ("no-preference", "settle")):
        context = browser.new_context(reduced_motion=motion)
        page = context.new_page()
        page.goto(f"{host}/en/practice/p1/order-take-off-1/")
        page.locator("[data-move='1']:enabled").first.click()
        assert page.evaluate("getComputedStyle(document.querySelector('.moved')).animationName") == expected
        context.close()
