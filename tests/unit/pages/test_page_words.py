import pytest
from demo import project
from site_samples import page_context

from signage.pages.words import PageWords


def words(tag):
    return PageWords(project().wording(tag))


def test_lines_may_break_after_articles_but_not_inside_a_time():
    context = page_context("en")
    headline = context.step_headline(next(s for s in context.protocol.steps if s.id == "hood-off"))
    assert "\u00a0" not in headline
    assert words("en").seconds(20) == "20\u00a0s"


@pytest.mark.parametrize(("tag", "digits"), [("en", "0123456789"), ("ar", "٠١٢٣٤٥٦٧٨٩")])
def test_digits_are_those_of_the_locale(tag, digits):
    assert words(tag).digits == digits


@pytest.mark.parametrize(("tag", "direction"), [("ar", "rtl"), ("ar-XB", "rtl"), ("am", "ltr")])
def test_direction_is_that_of_the_script(tag, direction):
    assert words(tag).direction == direction
    assert words(tag).speech == tag.split("-")[0]
