"""What a picture says in the language of a sheet, and what is said where nobody has translated it."""

from dataclasses import replace

import demo
from picture_sheet_samples import picture_sheet, words_of

from signage.compose.pictures.context import Meaning
from signage.drawing.marks import Group, Structure, groups_of, texts_of, walk
from signage.drawing.roles import GroupRole
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES
from signage.text.font_set import BUNDLED_FONTS

UNTRANSLATED = "sign-bare-hand"
"""A picture that no step of the demo names, so no catalogue has its sentence."""


def test_a_picture_of_a_step_speaks_the_language_of_the_sheet():
    meaning = demo.project().picture_context("", "ar").meaning("hand-rub")
    assert meaning.is_translated
    assert meaning.language == "ar"
    assert meaning.text == demo.project().wording("ar").content("picture/hand-rub")


def test_a_picture_that_nobody_has_translated_speaks_its_own_language():
    meaning = demo.project().picture_context("", "ar").meaning(UNTRANSLATED)
    assert meaning == Meaning(
        PICTURES.scene(UNTRANSLATED).alternative, "en", BUNDLED_FONTS, is_translated=False
    )


def test_in_the_language_of_the_scenes_nothing_is_untranslated():
    context = demo.project().picture_context("", "en")
    assert all(context.meaning(name).is_translated for name in context.pictures)


def test_a_library_in_another_source_language_does_not_pass_english_off_as_its_own():
    context = demo.project().picture_context("", "fr")
    french = replace(context, library=replace(context.library, source_locale="fr"))
    assert french.meaning(UNTRANSLATED) == Meaning(
        PICTURES.scene(UNTRANSLATED).alternative, "en", BUNDLED_FONTS, is_translated=False
    )


def test_an_untranslated_sentence_is_marked_and_set_in_its_own_language():
    pages = picture_sheet("pictures", "ar", protocol="").pages
    page, cell = next(
        (page, group)
        for page in pages
        for group, _ in groups_of(page, GroupRole.SCENE)
        if group.name == UNTRANSLATED
    )
    assert cell.fact("translated") is False
    assert UNTRANSLATED in [group.name for group, _ in groups_of(page, GroupRole.UNTRANSLATED)]
    assert demo.project().wording("ar").fixed("pictures-untranslated") in words_of(page)
    sentence = next(mark for mark, _ in texts_of(page) if mark.message == f"picture/{UNTRANSLATED}")
    assert sentence.language == "en"
    figure = next(
        mark for mark, _ in walk(cell.marks) if isinstance(mark, Group) and mark.structure is Structure.FIGURE
    )
    assert figure.language == "en"


def test_a_translated_sentence_carries_no_mark():
    for page in picture_sheet("pictures", "ar").pages:
        assert groups_of(page, GroupRole.UNTRANSLATED) == []
