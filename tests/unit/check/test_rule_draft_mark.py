import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.draft_mark import RULE
from signage.drawing.marks import Group, TextMark


def test_an_edge_without_the_sentence_is_found():
    def cut(mark):
        return None if isinstance(mark, Group) and mark.role == "ribbon" and mark.name == "bottom" else mark

    sheet = demo.sheet(tag="ar", phase="take-off")
    problems = found(RULE, edited(sheet, cut), demo.context("ar"))
    assert [("bottom" in problem.message) for problem in problems] == [True] * len(sheet.pages)


def test_a_ribbon_in_one_language_only_is_found():
    def cut(mark):
        return (
            None if isinstance(mark, TextMark) and mark.role == "ribbon" and mark.language == "ar" else mark
        )

    sheet = demo.sheet(tag="ar", phase="take-off")
    assert len(found(RULE, edited(sheet, cut), demo.context("ar"))) == 4 * len(sheet.pages)


def test_a_card_without_its_tag_is_found():
    def cut(mark):
        return None if isinstance(mark, Group) and mark.role == "draft-tag" else mark

    sheet = edited(demo.sheet("step-cards", paper="A4"), cut)
    assert len(found(RULE, sheet, demo.context())) == len(sheet.pages)


def test_every_sheet_of_the_demo_says_draft():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="put-on"), demo.context(tag))
        assert not found(RULE, demo.sheet("step-cards", tag, paper="A4"), demo.context(tag))
        assert not found(RULE, demo.sheet("pocket-checklist", tag, paper="A4"), demo.context(tag))
