"""Going through steps by keys, fingers and time, on a phone and on a keyboard."""

import pytest


def is_at(page, step):
    page.wait_for_url(f"**/p1/{step}/**")


@pytest.mark.parametrize(
    ("tag", "on", "back"), [("en", "ArrowRight", "ArrowLeft"), ("ar", "ArrowLeft", "ArrowRight")]
)
def test_arrow_keys_go_in_the_direction_of_reading(visit, tag, on, back):
    page = visit.open(f"{tag}/p1/apron-off/")
    page.keyboard.press(on)
    is_at(page, "rub-after-apron")
    page.keyboard.press(back)
    is_at(page, "apron-off")


SWIPE = """([from, to, down]) => {
    const target = document.body;
    const touch = (x, y) => new Touch({identifier: 1, target, clientX: x, clientY: y});
    const send = (kind, touches, changedTouches) =>
        target.dispatchEvent(new TouchEvent(kind, {bubbles: true, touches, changedTouches}));
    send('touchstart', [touch(from, 400)], [touch(from, 400)]);
    send('touchend', [], [touch(to, 400 + down)]);
}"""


@pytest.mark.parametrize(("tag", "start", "end"), [("en", 300, 100), ("ar", 100, 300)])
def test_a_swipe_turns_the_page(visit, tag, start, end):
    page = visit.open(f"{tag}/p1/apron-off/")
    page.evaluate(SWIPE, [start, end, 10])
    is_at(page, "rub-after-apron")


def test_scrolling_is_no_swipe(visit):
    page = visit.open("en/p1/apron-off/")
    page.evaluate(SWIPE, [300, 200, 300])
    page.evaluate(SWIPE, [300, 270, 0])
    page.wait_for_timeout(200)
    assert "/apron-off/" in page.url


def test_the_way_by_keyboard_runs_as_the_page_reads(visit):
    page = visit.open("en/p1/wash-hands/")
    reached = []
    for _ in range(9):
        page.keyboard.press("Tab")
        reached.append(page.evaluate("document.activeElement.textContent.trim().replace(/\\s+/g, ' ')"))
    assert reached[0] == "To the content"
    assert reached[1] == "All steps"
    assert reached[2] == "English"
    assert reached[4:8] == ["Start the time", "If something goes wrong", "Back", "Next"]


def test_the_skip_link_leads_past_the_head(visit):
    page = visit.open("en/p1/wash-hands/")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.textContent") == "Start the time"


def test_what_has_the_focus_is_not_behind_the_bar(visit):
    """WCAG 2.2, success criterion 2.4.11."""
    page = visit.open("en/p1/")
    for _ in range(20):
        page.keyboard.press("Tab")
    box = page.evaluate("document.activeElement.getBoundingClientRect().toJSON()")
    assert box["top"] >= 0
    assert box["bottom"] <= 844
    page = visit.open("en/practice/p1/meaning-take-off/")
    bar = page.locator(".going").bounding_box()["y"]
    for _ in range(22):
        page.keyboard.press("Tab")
        inside = page.evaluate("document.activeElement.closest('main') !== null")
        bottom = page.evaluate("document.activeElement.getBoundingClientRect().bottom")
        assert not inside or bottom <= bar + 1


def test_languages_lead_to_the_same_step(visit):
    page = visit.open("en/p1/goggles-off/")
    page.locator("details.menu summary").first.click()
    page.get_by_role("link", name="العربية").click()
    page.wait_for_url("**/ar/p1/goggles-off/**")


def test_a_menu_closes_with_escape_and_gives_the_focus_back(visit):
    page = visit.open("en/p1/goggles-off/")
    menu = page.locator("details.menu").last
    menu.locator("summary").click()
    assert menu.get_attribute("open") is not None
    page.keyboard.press("Escape")
    assert menu.get_attribute("open") is None
    assert page.evaluate("document.activeElement.tagName") == "SUMMARY"


@pytest.mark.parametrize(("tag", "begin", "later"), [("en", "40 s", "10 s"), ("ar", "٤٠ ث", "١٠ ث")])
def test_the_timer_counts_down_in_the_numerals_of_the_page(visit, tag, begin, later):
    visit.page.clock.install()
    page = visit.open(f"{tag}/p1/wash-hands/")
    shown = page.locator(".timer output")
    assert shown.inner_text().replace("\u00a0", " ") == begin
    page.locator(".timer button").click()
    page.clock.run_for(30_000)
    assert shown.inner_text().replace("\u00a0", " ") == later
    page.clock.run_for(10_500)
    over = page.locator(".timer [role=status]")
    assert over.inner_text() == over.get_attribute("data-over")
    assert shown.inner_text().replace("\u00a0", " ") == begin


def test_the_timer_can_be_stopped(visit):
    visit.page.clock.install()
    page = visit.open("en/p1/wash-hands/")
    button = page.locator(".timer button")
    button.click()
    page.clock.run_for(5_000)
    button.click()
    page.clock.run_for(60_000)
    assert page.locator(".timer output").inner_text() == "40\u00a0s"
    assert page.locator(".timer [role=status]").inner_text() == ""


VOICES = """tags => {
    const voices = tags.map(([lang, localService]) => ({lang, localService, name: lang}));
    window.spoken = [];
    Object.defineProperty(window, 'speechSynthesis', {value: {
        getVoices: () => voices, addEventListener() {}, cancel() {},
        speak(utterance) { window.spoken.push([utterance.text, utterance.lang]); window.last = utterance; },
    }});
    window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
}"""


def with_voices(visit, voices):
    visit.page.add_init_script(f"({VOICES})({voices!r})".replace("True", "true").replace("False", "false"))


def test_a_phone_with_a_voice_reads_the_step_aloud(visit):
    with_voices(visit, [["fr_FR", True], ["en_GB", True]])
    page = visit.open("en/p1/goggles-off/")
    button = page.get_by_role("button", name="Read aloud")
    button.click()
    ((text, language),) = page.evaluate("window.spoken")
    assert text.startswith("Take off goggles. Eyes shut.")
    assert "Touch only the strap." in text
    assert language == "en_GB"
    assert page.locator("[data-read]").inner_text() == "Stop reading"
    page.evaluate("window.last.onend()")
    assert page.locator("[data-read]").inner_text() == "Read aloud"


@pytest.mark.parametrize(
    "voices", [[], [["fr_FR", True]], [["en_GB", False]]], ids=["none", "other", "not its own"]
)
def test_a_phone_without_a_voice_of_its_own_shows_no_button(visit, voices):
    with_voices(visit, voices)
    page = visit.open("en/p1/goggles-off/")
    assert not page.locator("[data-read]").is_visible()


def test_a_browser_without_speech_shows_no_button_and_no_fault(visit):
    visit.page.add_init_script(
        "delete window.speechSynthesis; Object.defineProperty(window, 'speechSynthesis', {value: undefined});"
    )
    page = visit.open("en/p1/goggles-off/")
    assert not page.locator("[data-read]").is_visible()
