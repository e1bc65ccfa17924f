"""Exercises and quizzes played through by keys, taps and dragging."""

import re

import pytest
from site_samples import page_context

ORDERING = "practice/p1/order-take-off-1/"


def keys(page):
    return page.eval_on_selector_all(
        "[data-order] > li", "items => items.map(each => Number(each.dataset.key))"
    )


def sort_by_handle(page):
    """The right order by arrow keys alone: each step in turn to its place."""
    for place in range(len(keys(page))):
        page.locator(f"li[data-key='{place}'] .handle").focus()
        for _ in range(keys(page).index(place) - place):
            page.keyboard.press("ArrowUp")


@pytest.mark.parametrize("tag", ["en", "ar", "hi", "am"])
def test_the_right_order_by_keyboard(visit, tag):
    page = visit.open(f"{tag}/{ORDERING}")
    words = page_context(tag).words
    assert keys(page) != [0, 1, 2, 3, 4]
    sort_by_handle(page)
    assert keys(page) == [0, 1, 2, 3, 4]
    assert words.number(3) in page.locator("[data-place-words]").inner_text()
    page.get_by_role("button", name=words.fixed("page-check"), exact=True).press("Enter")
    assert page.locator("[data-answer]").inner_text() == words.fixed("page-right")


def test_an_unsafe_order_by_taps_names_the_step_and_the_reason(visit):
    page = visit.open(f"en/{ORDERING}")
    sort_by_handle(page)
    last = page.locator("li[data-key='3']")  # the rub after the apron goes behind the chair
    last.locator("[data-move='1']").click()
    assert keys(page) == [0, 1, 2, 4, 3]
    page.locator("[data-judge]").click()
    answer = page.locator("[data-answer]")
    assert answer.inner_text().startswith("Not safe. At ")
    assert "Hands were not cleaned before it." in answer.inner_text()
    assert "wrong" in answer.get_attribute("class")


def test_an_order_that_is_safe_but_not_ours_is_told_so(visit):
    page = visit.open("en/practice/p1/order-put-on-1/")
    sort_by_handle(page)
    page.locator("li[data-key='0'] [data-move='1']").click()
    page.locator("[data-judge]").click()
    assert page.locator("[data-answer]").inner_text() == page_context("en").words.fixed("page-safe-not-ours")


def test_inside_a_hand_technique_no_other_order_is_called_safe(visit):
    page = visit.open("en/practice/p3/order-rub-1/")
    sort_by_handle(page)
    page.locator("li[data-key='0'] [data-move='1']").click()
    page.locator("[data-judge]").click()
    assert page.locator("[data-answer]").inner_text() == page_context("en").words.fixed("page-other-order")


def test_a_step_can_be_dragged(visit):
    page = visit.open(f"en/{ORDERING}")
    before = keys(page)
    page.set_viewport_size({"width": 390, "height": 1400})
    grip = page.locator(".handle").first.bounding_box()
    goal = page.locator("[data-order] > li").nth(2).bounding_box()
    page.mouse.move(grip["x"] + 10, grip["y"] + 10)
    page.mouse.down()
    page.mouse.move(grip["x"] + 10, goal["y"] + goal["height"] - 10, steps=8)
    page.mouse.up()
    assert keys(page) == [*before[1:3], before[0], *before[3:]]
    numbers = page.eval_on_selector_all(".orders .handle", "all => all.map(each => each.textContent)")
    assert numbers == ["1", "2", "3", "4", "5"]


def test_a_verdict_goes_when_the_order_changes(visit):
    page = visit.open(f"en/{ORDERING}")
    page.locator("[data-judge]").click()
    assert page.locator("[data-answer]").is_visible()
    page.locator("[data-move='1']:enabled").first.click()
    assert not page.locator("[data-answer]").is_visible()


def test_focus_stays_with_the_step_that_moves(visit):
    page = visit.open(f"en/{ORDERING}")
    button = page.locator("li").filter(has=page.locator(".handle")).nth(1).locator("[data-move='-1']")
    button.focus()
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.classList.contains('handle')")
    assert page.evaluate("document.activeElement.textContent") == "1"


@pytest.mark.parametrize("tag", ["en", "ar"])
@pytest.mark.parametrize("quiz", ["meaning-take-off", "container-take-off"])
def test_a_quiz_played_through(visit, tag, quiz):
    page = visit.open(f"{tag}/practice/p1/{quiz}/")
    words = page_context(tag).words
    questions = page.locator(".question")
    for number in range(questions.count()):
        question = questions.nth(number)
        answer = question.locator("[data-answer]")
        question.locator("li:not([data-right]) button").first.click()
        assert answer.inner_text() == words.fixed("page-not-right")
        question.locator("li[data-right] button").click()
        assert answer.inner_text() == words.fixed("page-right")
        assert question.locator("li.right").count() == 1
        assert question.locator("li.wrong").count() == 0


def test_what_is_wrong_here_by_keyboard(visit):
    page = visit.open("en/practice/p1/wrong-take-off-3/")
    page.locator("li:not([data-right]) button").first.press("Enter")
    assert page.locator("[data-answer]").inner_text() == "Not right. Look again."
    page.locator("li[data-right] button").press("Enter")
    answer = page.locator("[data-answer]").inner_text().replace("\u2068", "").replace("\u2069", "")
    wrong = page.locator("li[data-right] button").inner_text()
    assert re.fullmatch(r"At “(.+)”: (.+)\.", answer), answer
    assert answer.split("”")[0].removeprefix("At “") in wrong


def test_exercises_follow_one_another(visit):
    page = visit.open("en/practice/p1/")
    page.locator("main .plain-link").first.click()
    for number in range(2, 5):
        page.locator("a[rel=next]").click()
        page.wait_for_load_state()
        assert page.locator(".at span").inner_text().replace("\u2068", "").startswith(f"Exercise {number}")
