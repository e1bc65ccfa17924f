"""The comprehension trial: what readers see, and what they must not see."""

import re

import demo
import pytest
from picture_sheet_samples import names_on, picture_sheet, problems_of, words_of

from signage.check.blockers import reasons_not_to_print
from signage.check.sheet_rules import (
    contrast,
    draft_mark,
    margins,
    missing_glyph,
    overflow,
    picture_size,
    ruler,
    text_overlap,
    type_floor,
)
from signage.drawing.marks import FormMark, Group, Structure, groups_of, walk
from signage.drawing.roles import GroupRole
from signage.model.picture_trial import trial_forms
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

GENERAL_RULES = [
    rule.RULE
    for rule in (
        contrast, draft_mark, margins, missing_glyph, overflow, picture_size, ruler, text_overlap, type_floor,
    )
]  # fmt: skip


def trial(tag="en", **how):
    return picture_sheet("picture-trial", tag, **how)


def pages_for_readers(sheet):
    return [page for page in sheet.pages if groups_of(page, GroupRole.QUESTION)]


def figures_on(page):
    return [
        mark for mark, _ in walk(page.marks) if isinstance(mark, Group) and mark.structure is Structure.FIGURE
    ]


def pictures():
    return {step.picture for step in demo.project().library.protocols["layered-protection"].steps}


def test_both_forms_show_all_pictures_in_the_orders_of_their_seed():
    shown = [name for page in pages_for_readers(trial()) for name in names_on(page)]
    forms = trial_forms(pictures(), 1)
    assert shown == [*forms["A"], *forms["B"]]


def test_another_seed_shows_another_order():
    first, other = ([names_on(page) for page in pages_for_readers(trial(seed=seed))] for seed in (1, 2))
    assert first != other


def test_numbers_begin_anew_on_each_form():
    count = len(pictures())
    numbers = [
        group.fact("number")
        for page in pages_for_readers(trial())
        for group, _ in groups_of(page, GroupRole.QUESTION)
    ]
    assert numbers == [*range(1, count + 1), *range(1, count + 1)]


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_nothing_on_a_form_gives_an_answer_away(tag):
    context = demo.project().picture_context("layered-protection", tag)
    for page in pages_for_readers(trial(tag)):
        said = " ".join([*words_of(page), *(figure.alternative or "" for figure in figures_on(page))])
        for name in context.pictures:
            assert not re.search(rf"\b{name}\b", said)
            assert context.meaning(name).text not in said


def test_a_screen_reader_hears_only_the_number():
    for page in pages_for_readers(trial()):
        spoken = [figure.alternative.translate({0x2068: None, 0x2069: None}) for figure in figures_on(page)]
        numbers = [group.fact("number") for group, _ in groups_of(page, GroupRole.QUESTION)]
        assert spoken == [f"Picture {number}" for number in numbers]


def test_pictures_are_thirty_millimetres_and_twelve_a_page():
    pages = pages_for_readers(trial())
    assert len(groups_of(pages[0], GroupRole.QUESTION)) == 12
    for page in pages:
        assert {round(box.width, 3) for _, box in groups_of(page, GroupRole.PICTURE)} == {30.0}


def test_every_picture_has_two_questions_and_four_lines():
    page = pages_for_readers(trial())[0]
    questions = words_of(page, "question")
    assert questions.count("What is the person doing?") == questions.count("What must you do?") == 12
    for group, _ in groups_of(page, GroupRole.QUESTION):
        lines = [mark for mark, _ in walk(group.marks) if getattr(mark, "butt_caps", False)]
        assert len(lines) == 4


def test_a_picture_of_a_thing_is_not_asked_about_a_person():
    sheet = trial(protocol="")
    for page in pages_for_readers(sheet):
        for group, _ in groups_of(page, GroupRole.QUESTION):
            (name,) = [
                inner.name for inner, _ in walk(group.marks) if getattr(inner, "role", "") == "picture"
            ]
            asked = {mark.text for mark, _ in walk(group.marks) if getattr(mark, "role", "") == "question"}
            assert ("What is this?" in asked) == (PICTURES.scene(name).gloss.who == "anyone")


def test_the_form_asks_for_a_number_and_never_for_a_name():
    for page in pages_for_readers(trial()):
        fields = words_of(page, "field")
        assert fields == ["Reader number", "Date", "English"]


def test_the_person_who_runs_it_learns_which_pages_are_which():
    sheet = trial()
    guide = sheet.pages[0]
    ranges = [text for text in words_of(guide, "rule") if re.fullmatch(r"\d+(–\d+)?", text)]
    assert len(ranges) == 3
    bounds = [[int(number) for number in re.split("–", text)] for text in ranges]
    for form, (first, last) in zip("AB", [(each[0], each[-1]) for each in bounds[:2]], strict=True):
        for number in range(first, last + 1):
            assert f"Form {form}" in words_of(sheet.pages[number - 1], "title")
    first_key, last_key = bounds[2][0], bounds[2][-1]
    assert last_key == len(sheet.pages)
    assert all("Key" in words_of(page, "title") for page in sheet.pages[first_key - 1 :])


def test_the_guide_names_the_table_and_the_command():
    assert words_of(trial().pages[0], "code") == [
        "layered-protection-picture-trial-1-en-a4.csv",
        "signage audit pictures layered-protection-picture-trial-1-en-a4.csv",
    ]
    assert trial().file_stem == "layered-protection-picture-trial-1-en-a4"


def test_the_code_at_the_foot_tells_form_and_seed():
    page = pages_for_readers(trial(seed=27))[0]
    assert any("A-27" in text for text in words_of(page, "control"))


def test_on_a_copier_the_trial_tests_what_the_copier_prints():
    keys = {
        mark.form.key
        for page in pages_for_readers(trial(tone="mono"))
        for mark, _ in walk(page.marks)
        if isinstance(mark, FormMark)
    }
    assert all(key.endswith("-mono") for key in keys)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("tag", [*demo.LANGUAGES, "en-XA", "ar-XB"])
def test_the_document_holds_what_every_sheet_must(tag, paper):
    sheet = trial(tag, paper=paper)
    assert reasons_not_to_print(sheet, demo.project().wording(tag)) == ()
    assert problems_of(sheet, *GENERAL_RULES) == []
