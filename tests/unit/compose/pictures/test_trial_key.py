"""The key of a trial."""

import demo
from picture_sheet_samples import ISOLATES, picture_sheet, words_of

from signage.drawing.marks import PathMark, TextMark, groups_of, walk
from signage.drawing.roles import GroupRole
from signage.model.picture_trial import Category, trial_forms
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES


def key_pages(**how):
    return [
        page for page in picture_sheet("picture-trial", **how).pages if groups_of(page, GroupRole.KEY_ROW)
    ]


def rows():
    return [group for page in key_pages() for group, _ in groups_of(page, GroupRole.KEY_ROW)]


def texts(group, role):
    return [
        mark.text.translate(ISOLATES)
        for mark, _ in walk(group.marks)
        if isinstance(mark, TextMark) and mark.role == role
    ]


def test_every_picture_has_its_number_on_both_forms():
    forms = trial_forms(demo.project().picture_context("layered-protection", "en").pictures, 1)
    assert [row.name for row in rows()] == list(forms["A"])
    for row in rows():
        numbers = [str(forms[form].index(row.name) + 1) for form in ("A", "B")]
        assert texts(row, "key-number") == numbers


def test_every_picture_is_named_and_said():
    for row in rows():
        assert texts(row, "scene-name") == [row.name]
        assert texts(row, "sentence") == [PICTURES.scene(row.name).alternative]


def test_pictures_of_critical_steps_are_marked():
    steps = demo.context().protocol.steps
    critical = {step.picture for step in steps if step.critical}
    assert critical
    for row in rows():
        assert (texts(row, "mark") == ["Critical"]) == (row.name in critical)


def test_every_key_page_says_that_it_is_not_for_readers():
    for page in key_pages():
        assert any("Never show this page to readers" in text for text in words_of(page, "key-rule"))


def test_a_key_page_looks_unlike_a_form():
    for page in key_pages():
        (title,) = [mark for mark, _ in walk(page.marks) if getattr(mark, "role", "") == "title"]
        assert title.colour == "#FFFFFF"
        assert any(
            isinstance(mark, PathMark) and mark.fill == "#14202C" and not mark.stroke
            for mark, _ in walk(page.marks)
        )


def test_the_first_page_says_how_to_rate_in_the_words_that_are_typed():
    first, *others = key_pages()
    assert words_of(first, "category") == [category.value for category in Category]
    assert len(words_of(first, "meaning")) == len(Category)
    for page in others:
        assert words_of(page, "category") == []
