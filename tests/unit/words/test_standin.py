import unicodedata

import pytest
from word_samples import build_library

from signage.ground.language import is_right_to_left
from signage.model.messages import library_messages
from signage.text.font_set import BUNDLED_FONTS
from signage.text.fonts import face, font_for
from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.placeholders import placeholder_names
from signage.words.standin import STAND_INS, accented, in_arabic_letters
from signage.words.wording import open_wording

SOURCES = [text.source for text in FIXED_TEXTS.values()]


@pytest.mark.parametrize("make", STAND_INS.values())
def test_placeholders_stay_whole(make):
    broken = [source for source in SOURCES if placeholder_names(make(source)) != placeholder_names(source)]
    assert broken == []


def test_accented_text_is_forty_percent_longer_and_shows_where_it_was_cut():
    made = {source: accented(source) for source in SOURCES if any(sign.isalpha() for sign in source)}
    assert [text for source, text in made.items() if not 0 <= len(text) - 1.4 * len(source) <= 8] == []
    assert [text for text in made.values() if (text[0], text[-1]) != ("[", "]")] == []


def test_accented_text_is_still_read_as_its_source():
    plain = "".join(
        sign
        for sign in unicodedata.normalize("NFD", accented("Rub hands"))
        if not unicodedata.combining(sign)
    )
    assert plain.startswith("[Rub hands".replace("b", "ƀ"))


def test_arabic_letters_make_the_text_run_right_to_left():
    begins = [in_arabic_letters(source).split("{")[0] for source in SOURCES]
    directions = [{unicodedata.bidirectional(sign) for sign in begin} for begin in begins]
    assert [begin for begin, found in zip(begins, directions, strict=True) if found & {"L", "R"}] == []
    assert is_right_to_left("ar-XB")


def test_a_sign_without_letters_stays_as_it_is():
    assert accented(", ") == ", "
    assert in_arabic_letters(", ") == "، "


@pytest.mark.parametrize(("tag", "scripts"), [("en-XA", ("Latn",)), ("ar-XB", ("Arab", "Latn"))])
def test_the_fonts_have_every_letter(tag, scripts):
    coverage = frozenset().union(*(face(font_for(script, 400)).coverage for script in scripts))
    text = "".join(
        STAND_INS[tag](f"{source} abcdefghijklmnopqrstuvwxyz ABCDEFGHIJKLMNOPQRSTUVWXYZ")
        for source in SOURCES
    )
    assert {sign for sign in text if ord(sign) not in coverage} == set()


@pytest.mark.parametrize("tag", list(STAND_INS))
def test_a_stand_in_needs_no_file_and_leaves_none(tag, tmp_path):
    library = build_library()
    wording = open_wording(library, library_messages(library), tmp_path, tag, BUNDLED_FONTS)
    protocol = library.protocols["off"]
    texts = [wording.step_text(protocol, step, "text") for step in protocol.steps]
    assert wording.gaps == ()
    assert all(texts)
    assert wording.name != tag
    assert list(tmp_path.iterdir()) == []
