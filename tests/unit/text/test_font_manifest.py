"""The manifest says of each font which scripts it serves."""

from collections import Counter

import pytest
from fontTools import unicodedata as font_unicode

from signage.ground.glyphs import FontKey
from signage.text.fonts import face
from signage.text.manifest import FONT_FILES

SCRIPTS_OF_SHEETS = {
    "Latn", "Grek", "Cyrl", "Arab", "Deva", "Beng", "Taml", "Ethi", "Thai", "Khmr", "Mymr", "Hebr", "Sinh",
    "Mlym", "Geor", "Armn", "Telu", "Knda", "Gujr", "Guru", "Orya", "Laoo", "Hani",
}  # fmt: skip
COMBINED = {"Hans": "Hani", "Hant": "Hani", "Jpan": "Hira", "Kore": "Hang"}
"""ISO 15924 codes for a writing system, and a script of Unicode in it."""


def test_every_script_of_the_sheets_has_exactly_one_font():
    counts = Counter(script for file in FONT_FILES for script in file.scripts)
    assert set(counts) >= SCRIPTS_OF_SHEETS
    assert set(counts.values()) == {1}


@pytest.mark.parametrize("file", FONT_FILES, ids=lambda file: file.name)
def test_a_font_has_letters_of_its_scripts(file):
    coverage = face(FontKey(file.name, 400)).coverage
    found = Counter(font_unicode.script(chr(code)) for code in coverage)
    for script in file.scripts:
        assert found[COMBINED.get(script, script)] >= 20


def test_file_names_are_unique_and_hashes_are_whole():
    assert len({file.name for file in FONT_FILES}) == len(FONT_FILES)
    assert {len(file.sha256) for file in FONT_FILES} == {64}
