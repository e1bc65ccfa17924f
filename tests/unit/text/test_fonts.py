"""Fonts come from pinned packages, unchanged, or from the folder of the content; never from the system."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from signage.ground.errors import MissingFromMachineError, UnreadableInputError, WrongUsageError
from signage.ground.glyphs import FontKey
from signage.text import fonts
from signage.text.manifest import FILE_BY_NAME, FONT_FILES, NOTO_CJK
from signage.text.paragraph import shape_paragraph


@pytest.fixture
def no_added_fonts():
    fonts.forget_added_fonts()
    yield
    fonts.forget_added_fonts()


@pytest.fixture
def changed_manifest(monkeypatch):
    """Lets a test change a row of the manifest, with nothing remembered before or after."""

    def change(name, **values):
        monkeypatch.setitem(FILE_BY_NAME, name, replace(FILE_BY_NAME[name], **values))
        fonts.forget_added_fonts()

    yield change
    monkeypatch.undo()
    fonts.forget_added_fonts()


@pytest.fixture
def emoji_font():
    return fonts.font_path(FontKey("NotoSans[wght].ttf", 400)).parent / "NotoEmoji[wght].ttf"


@pytest.mark.parametrize("file", FONT_FILES, ids=lambda file: file.name)
def test_every_font_of_the_manifest_is_installed_and_unchanged(file):
    assert fonts.font_path(FontKey(file.name, 400)).name == file.name


def test_a_changed_font_file_is_an_error_that_names_file_and_cure(changed_manifest):
    changed_manifest("NotoSansThai[wght].ttf", sha256="0" * 64)
    with pytest.raises(MissingFromMachineError) as error:
        shape_paragraph("ปิด", "th", 600)
    assert "NotoSansThai[wght].ttf" in str(error.value)
    assert "pip install 'manimgx-fonts" in str(error.value)


def test_a_font_file_that_is_gone_is_an_error_that_names_it(changed_manifest):
    changed_manifest("NotoSansLao[wght].ttf", folder="elsewhere")
    with pytest.raises(MissingFromMachineError, match=r"NotoSansLao.*is not in"):
        fonts.font_path(FontKey("NotoSansLao[wght].ttf", 400))


def test_without_the_optional_fonts_chinese_names_their_package(changed_manifest):
    package = replace(NOTO_CJK, module="package_that_is_not_installed")
    changed_manifest("NotoSansSC[wght].ttf", package=package)
    with pytest.raises(MissingFromMachineError, match=r"pip install -e '\.\[cjk\]'"):
        fonts.face(fonts.font_for("Hani", 400))


def test_a_font_outside_manifest_and_content_is_refused():
    with pytest.raises(WrongUsageError, match=r"Arial\.ttf"):
        fonts.font_path(FontKey("Arial.ttf", 400))


def test_a_weight_outside_the_type_scale_is_refused():
    with pytest.raises(WrongUsageError, match="500"):
        fonts.face(FontKey("NotoSans[wght].ttf", 500))


def test_the_weight_axis_widens_letters():
    widths = [shape_paragraph("wash hands", "en", weight).width for weight in (400, 600, 700)]
    assert widths == sorted(set(widths))


def test_a_script_without_a_font_of_its_own_falls_back_to_latin():
    assert fonts.font_for("Runr", 700) == FontKey("NotoSans[wght].ttf", 700)


def test_a_face_covers_what_harfbuzz_can_compose_or_substitute():
    gujarati = fonts.face(fonts.font_for("Gujr", 400))
    assert 0xA0 not in gujarati.coverage
    assert gujarati.covers("\u00a0")  # set with the space glyph
    thai = fonts.face(fonts.font_for("Thai", 400))
    assert thai.covers("\u2011")  # set with the hyphen
    latin = fonts.face(fonts.font_for("Latn", 400))
    assert latin.covers("e\u0301")
    assert not latin.covers("ก")


def test_fonts_of_the_content_join_the_end_of_the_chain(tmp_path, emoji_font, no_added_fonts):
    before = shape_paragraph("Wash 🧼", "en", 400)
    assert [glyph.character for glyph in before.missing] == ["🧼"]
    shutil.copy(emoji_font, tmp_path / "Soap.ttf")
    assert fonts.add_font_folder(tmp_path) == ("Soap.ttf",)
    after = shape_paragraph("Wash 🧼", "en", 400)
    assert after.missing == ()
    assert [shaped.item.font.file for shaped in after.items] == ["NotoSans[wght].ttf", "Soap.ttf"]
    assert fonts.fallback_chain()[-1] == "Soap.ttf"


def test_adding_a_folder_twice_or_one_that_is_absent_changes_nothing(tmp_path, emoji_font, no_added_fonts):
    shutil.copy(emoji_font, tmp_path / "Soap.ttf")
    fonts.add_font_folder(tmp_path)
    fonts.add_font_folder(tmp_path)
    fonts.add_font_folder(tmp_path / "absent")
    assert fonts.fallback_chain().count("Soap.ttf") == 1


def test_faulty_fonts_of_the_content_are_gathered(tmp_path, emoji_font, no_added_fonts):
    Path(tmp_path / "broken.ttf").write_bytes(b"not a font at all")
    shutil.copy(emoji_font, tmp_path / "NotoSans[wght].ttf")
    with pytest.raises(UnreadableInputError) as error:
        fonts.add_font_folder(tmp_path)
    messages = [problem.message for problem in error.value.problems]
    assert len(messages) == 2
    assert "same file name" in messages[0]
    assert messages[1].startswith("broken.ttf: not an OpenType font")
