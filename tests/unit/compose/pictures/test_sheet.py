"""The sheet of all pictures."""

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
from signage.ground.fingerprint import fingerprint, revision_code
from signage.ground.geometry import Box
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

GENERAL_RULES = [
    rule.RULE
    for rule in (
        contrast, draft_mark, margins, missing_glyph, overflow, picture_size, ruler, text_overlap, type_floor,
    )
]  # fmt: skip


def scenes_on(page):
    return groups_of(page, GroupRole.SCENE)


def all_pictures():
    return picture_sheet("pictures", protocol="")


def test_every_picture_of_the_library_stands_once_with_its_number_in_order():
    found = [
        (group.fact("number"), group.name) for page in all_pictures().pages for group, _ in scenes_on(page)
    ]
    assert found == list(enumerate(demo.project().pictures, start=1))


def forms_of(marks):
    """Palette and side in millimetres of every drawing."""
    return [
        (
            mark.form.key.rsplit("-", 1)[-1],
            round(mark.transform.box(Box(0, 0, *[mark.form.size] * 2)).width, 3),
        )
        for mark, _ in walk(marks)
        if isinstance(mark, FormMark)
    ]


def test_each_picture_is_shown_in_both_sizes_in_colour_and_black_and_white():
    for scene, _ in scenes_on(all_pictures().pages[0]):
        assert forms_of(scene.marks) == [("colour", 25.0), ("mono", 25.0), ("colour", 15.0), ("mono", 15.0)]


def test_the_name_and_the_sentence_of_a_picture_stand_beside_it():
    page = all_pictures().pages[0]
    first = scenes_on(page)[0][0].name
    assert first in words_of(page, "scene-name")
    assert PICTURES.scene(first).alternative in words_of(page, "sentence")


def test_a_screen_reader_hears_each_picture_once():
    page = all_pictures().pages[0]
    for scene, _ in scenes_on(page):
        figures = [
            mark
            for mark, _ in walk(scene.marks)
            if isinstance(mark, Group) and mark.structure is Structure.FIGURE
        ]
        assert [figure.alternative for figure in figures] == [PICTURES.scene(scene.name).alternative]


def test_the_code_changes_with_any_picture():
    prints = {name: PICTURES.fingerprint(name) for name in demo.project().pictures}
    assert all_pictures().revision == revision_code(fingerprint(prints))
    assert all_pictures().revision != picture_sheet("pictures").revision
    for page in all_pictures().pages:
        assert any(all_pictures().revision in text for text in words_of(page, "control"))


def test_owners_and_the_first_review_stand_in_the_foot():
    context = demo.project().picture_context("", "en")
    said = " ".join(words_of(all_pictures().pages[0], "control"))
    for protocol in demo.project().library.protocols.values():
        assert protocol.owner in said
    first = min(protocol.review_by for protocol in context.protocols)
    assert context.wording.date(first).replace("\u00a0", " ") in said


def test_a_protocol_narrows_the_sheet_down():
    sheet = picture_sheet("pictures")
    shown = [name for page in sheet.pages for name in names_on(page, GroupRole.SCENE)]
    used = {step.picture for step in demo.project().library.protocols["layered-protection"].steps}
    assert shown == sorted(used)
    assert "Layered protection" in words_of(sheet.pages[0], "title")
    assert sheet.file_stem == "layered-protection-pictures-en-a4"


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("tag", [*demo.LANGUAGES, "en-XA", "ar-XB"])
def test_the_sheet_holds_what_every_sheet_must(tag, paper):
    sheet = picture_sheet("pictures", tag, paper=paper)
    assert reasons_not_to_print(sheet, demo.project().wording(tag)) == ()
    assert problems_of(sheet, *GENERAL_RULES) == []


@pytest.mark.parametrize("tag", ["en", "ar"])
def test_the_draft_sentence_stands_on_all_four_edges(tag):
    for page in picture_sheet("pictures", tag).pages:
        assert {group.name for group, _ in walk(page.marks) if is_ribbon(group)} == {
            "top",
            "bottom",
            "left",
            "right",
        }


def is_ribbon(mark):
    return isinstance(mark, Group) and mark.role == "ribbon"


def test_right_to_left_sheets_begin_at_the_right():
    page = picture_sheet("pictures", "ar").pages[0]
    first, second = (box for _, box in scenes_on(page)[:2])
    assert first.x > second.x
    assert first.y == second.y


def test_no_two_scenes_overlap():
    for page in all_pictures().pages:
        boxes = [box for _, box in scenes_on(page)]
        for index, box in enumerate(boxes):
            assert all(min(box.overlap(other)) <= 0.01 for other in boxes[index + 1 :])


def test_a_sheet_for_a_copier_still_shows_the_colours():
    palettes = {palette for palette, _ in forms_of(picture_sheet("pictures", tone="mono").pages[0].marks)}
    assert palettes == {"colour", "mono"}
