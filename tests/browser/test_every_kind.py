"""Every kind of page in four languages: by keyboard alone, with scripts off, and from files."""

import pytest
from site_samples import KINDS, LANGUAGES

CONTROLS = """() => [...document.querySelectorAll('a[href], button, summary, input')]
    .filter(each => !each.disabled && each.checkVisibility({checkVisibilityCSS: true})
        && !each.closest('details:not([open]) > :not(summary)'))"""
WHERE = """() => {
    const all = (CONTROLS)();
    const at = document.activeElement;
    const style = getComputedStyle(at);
    const isSeen = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
    return [all.indexOf(at), all.length, isSeen];
}""".replace("CONTROLS", CONTROLS)


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("tag", LANGUAGES)
def test_the_tabulator_reaches_every_control_in_the_order_of_the_page(phone, tag, kind):
    """WCAG 2.2, success criteria 2.1.1, 2.4.3 and 2.4.7."""
    page = phone.open(f"{tag}/{KINDS[kind]}")
    assert page.locator("[tabindex]:not([tabindex='-1'])").count() == 0
    _, count, _ = page.evaluate(WHERE)
    reached = []
    for _ in range(count):
        page.keyboard.press("Tab")
        place, _, is_seen = page.evaluate(WHERE)
        assert is_seen, place
        reached.append(place)
    assert reached == list(range(count))


@pytest.fixture(scope="module")
def plain(browser):
    """A phone without scripts that says what it asks for."""
    context = browser.new_context(java_script_enabled=False, viewport={"width": 390, "height": 844})
    page = context.new_page()
    page.asked = []
    page.on("request", lambda request: page.asked.append(request.url))
    yield page
    context.close()


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("tag", LANGUAGES)
def test_without_scripts_and_without_a_server_all_is_there(plain, folder, tag, kind):
    path, _, query = KINDS[kind].partition("?")
    plain.asked.clear()
    plain.goto(f"{(folder / tag / path / 'index.html').as_uri()}?{query}")
    assert plain.locator("h1").is_visible()
    assert plain.locator(".policy").is_visible()
    assert plain.locator(".draft").is_visible()
    assert plain.locator("main button:visible").count() == 0  # nothing that would do nothing
    assert plain.locator("main img:visible, main svg:visible").count() > 0 or kind in {"current", "practice"}
    for picture in plain.locator("main img").all()[:3]:
        assert picture.bounding_box()["width"] >= 48
    assert all(url.startswith(("file:", "data:")) for url in plain.asked)
