"""Fonts come from pinned packages, unchanged, or from the folder of the content; never from the system."""

import shutil
from dataclasses import replace
from pathlib import Path

import pytest
from text_samples import shape_paragraph

from signage.ground.errors import MissingFromMachineError, UnreadableInputError, WrongUsageError
from signage.ground.glyphs import FontKey
from signage.text import fonts, paragraph
from signage.text.font_set import BUNDLED_FONTS, open_font_set
from signage.text.manifest import FILE_BY_NAME, FONT_FILES, NOTO_CJK


@pytest.fixture
def changed_manifest(monkeypatch):
    """Lets a test change a row of the manifest, with nothing remembered before or after."""

    def change(name, **values):
        monkeypatch.setitem(FILE_BY_NAME, name, replace(FILE_BY_NAME[name], **values))
        forget()

    def forget():
        for remembered in (fonts.face, fonts._opened_bundled, fonts._checked_path):
            remembered.cache_clear()

    yield change
    monkeypatch.undo()
    forget()


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


def test_fonts_of_a_library_are_tried_last_and_by_this_library_alone(tmp_path, emoji_font):
    shutil.copy(emoji_font, tmp_path / "Soap.ttf")
    own = open_font_set(tmp_path)
    set_in_own = paragraph.shape_paragraph("Wash 🧼", "en", 400, own)
    assert set_in_own.missing == ()
    assert [shaped.item.font.file for shaped in set_in_own.items] == ["NotoSans[wght].ttf", "Soap.ttf"]
    assert own.fallback_fonts(400)[-1].file == "Soap.ttf"
    assert [glyph.character for glyph in shape_paragraph("Wash 🧼", "en", 400).missing] == ["🧼"]


def test_a_set_is_known_by_what_its_files_hold(tmp_path, emoji_font):
    for folder in ("here", "there"):
        (tmp_path / folder).mkdir()
        shutil.copy(emoji_font, tmp_path / folder / "Soap.ttf")
    assert open_font_set(tmp_path / "here") == open_font_set(tmp_path / "there")
    shutil.copy(emoji_font.with_name("NotoSansSymbols[wght].ttf"), tmp_path / "there" / "Soap.ttf")
    assert open_font_set(tmp_path / "here") != open_font_set(tmp_path / "there")
    assert open_font_set(tmp_path / "absent") == BUNDLED_FONTS


def test_a_font_that_changes_after_its_library_was_opened_is_not_set(tmp_path, emoji_font):
    file = tmp_path / "Soap.ttf"
    file.write_bytes(emoji_font.read_bytes() + b"\0" * 4)
    own = open_font_set(tmp_path)
    shutil.copy(emoji_font, file)
    with pytest.raises(MissingFromMachineError, match=r"Soap\.ttf has changed"):
        paragraph.shape_paragraph("Wash 🧼", "en", 400, own)


def test_faulty_fonts_of_the_content_are_gathered(tmp_path, emoji_font):
    Path(tmp_path / "broken.ttf").write_bytes(b"not a font at all")
    shutil.copy(emoji_font, tmp_path / "NotoSans[wght].ttf")
    with pytest.raises(UnreadableInputError) as error:
        open_font_set(tmp_path)
    messages = [problem.message for problem in error.value.problems]
    assert len(messages) == 2
    assert "same file name" in messages[0]
    assert messages[1].startswith("broken.ttf: not an OpenType font")
    assert {problem.code for problem in error.value.problems} == {"FN-1"}
