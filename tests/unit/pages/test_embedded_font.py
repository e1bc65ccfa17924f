import base64
import io
import re

import pytest
from fontTools.ttLib import TTFont

from signage.pages.embedded_font import font_style, letter_files, own_letters
from signage.text.fonts import font_for, font_path


def opened(style):
    data = re.search(r"base64,([^)]*)", style.decode()).group(1)
    return TTFont(io.BytesIO(base64.b64decode(data)))


def test_the_letters_that_pages_use_are_inside_in_every_weight():
    style = font_style("Ethi", ["የውጭ ጓንት", "ይሹ። P1"])
    font = opened(style)
    inside = {chr(code) for code in font.getBestCmap()}
    assert set("የውጭጓንትይሹ።") <= inside
    assert font.flavor == "woff2"
    (axis,) = [axis for axis in font["fvar"].axes if axis.axisTag == "wght"]
    assert axis.minValue <= 400
    assert axis.maxValue >= 700
    assert len(font.getGlyphOrder()) < 40


def test_latin_letters_and_digits_stay_with_the_phone():
    style = font_style("Ethi", ["የ P1 abc 20"]).decode()
    ranges = re.search(r"unicode-range:([^;]*)", style).group(1).split(",")
    assert ranges == ["U+12E8"]


def test_neighbouring_letters_are_named_as_a_range():
    style = font_style("Ethi", ["ሀሁሂ ሆ"]).decode()
    assert re.search(r"unicode-range:([^;]*)", style).group(1) == "U+1200-1202,U+1206"


def test_a_script_that_phones_have_is_a_file_that_only_a_computer_without_it_asks_for():
    files = dict(letter_files("Deva", ["पीछे"], ["हिन्दी"]))
    style = files.pop("site-assets/letters-deva.css").decode()
    ((name, font),) = files.items()
    faces = re.findall(r"font-weight:(\d+ \d+);.*?src:([^}]*)", style)
    assert [weights for weights, _ in faces] == ["400 500", "600 700"]
    for _, sources in faces:
        assert sources.startswith('local("Noto Sans Devanagari')
        assert sources.endswith("url(letters-deva.woff2) format('woff2')")
    assert name == "site-assets/letters-deva.woff2"
    assert set("पीछे") <= {chr(code) for code in TTFont(io.BytesIO(font)).getBestCmap()}


@pytest.mark.parametrize("script", ["Latn", "Arab", "Jpan"])
def test_scripts_of_every_device_bring_no_letters(script):
    assert not own_letters(script)


@pytest.mark.parametrize("script", ["Ethi", "Khmr", "Sinh"])
def test_the_outlines_are_those_of_the_sheets(script):
    letter = {"Ethi": "የ", "Khmr": "ក", "Sinh": "ක"}[script]
    small = opened(font_style(script, [letter]))
    whole = TTFont(str(font_path(font_for(script, 400))))
    advance = [font["hmtx"][font.getBestCmap()[ord(letter)]] for font in (small, whole)]
    assert advance[0] == advance[1]


def test_the_same_texts_give_the_same_bytes_in_any_order():
    assert font_style("Ethi", ["የው", "ጭ"]) == font_style("Ethi", ["ጭየ", "ው"])
