"""What must hold of a page of any kind in any language, in a real browser."""

from site_samples import KINDS

SIDEWAYS = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
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


def assert_open_to_all(phone, violations, tag, kind):
    """Language, direction, one heading, nothing that axe finds, and no sideways scrolling at 200 %."""
    page = phone.open(f"{tag}/{KINDS[kind]}")
    assert page.evaluate("document.documentElement.lang") == tag
    direction = page.evaluate("getComputedStyle(document.body).direction")
    assert direction == ("rtl" if tag == "ar" else "ltr")
    assert page.locator("h1").count() == 1
    assert violations(page) == []
    page.set_viewport_size({"width": 320, "height": 640})
    assert page.evaluate(SIDEWAYS) == 0
    page.evaluate("document.documentElement.dataset.size = 'largest'")  # 200 %
    assert page.evaluate(SIDEWAYS) == 0


def assert_all_controls_reached(phone, tag, kind):
    """WCAG 2.2, success criteria 2.1.1, 2.4.3 and 2.4.7: by the tabulator, in the order of the page."""
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


def assert_whole_without_scripts(plain, folder, tag, kind):
    """From a file, in a browser that runs no scripts: nothing is missing, nothing would do nothing."""
    path, _, query = KINDS[kind].partition("?")
    plain.asked.clear()
    plain.goto(f"{(folder / tag / path / 'index.html').as_uri()}?{query}")
    assert plain.locator("h1").is_visible()
    assert plain.locator(".policy").is_visible()
    assert plain.locator(".draft").is_visible()
    assert plain.locator("main button:visible").count() == 0
    assert plain.locator("main img:visible, main svg:visible").count() > 0 or kind in {"current", "practice"}
    for picture in plain.locator("main img").all()[:3]:
        assert picture.bounding_box()["width"] >= 48
    assert all(url.startswith(("file:", "data:")) for url in plain.asked)
