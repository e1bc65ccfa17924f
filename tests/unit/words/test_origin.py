"""A line on a sheet leads back to the text that it was made from."""

from signage.text.font_set import BUNDLED_FONTS
from signage.words.origin import TextOrigins
from signage.words.wording import open_wording

TEXTS = {
    "off/title": "Take off",
    "on/title": "Take off",
    "off/rub/text": "Rub both hands for {time}.",
    "interface/owner": "Owner: {role}",
    "ward/bay/zone/dirty": "Dirty side",
    "kit/a/name": "a",
}


def test_a_line_is_found_with_values_ties_and_isolates_in_it():
    origins = TextOrigins(TEXTS)
    for line, context in {
        "Take\u00a0off": "off/title",
        "Rub both hands for \u206820\u00a0s\u2069.": "off/rub/text",
        "Owner: \u2068nurse\u2069": "interface/owner",
        "\u2066P1\u2069  Dirty side": "ward/bay/zone/dirty",
        "Something else": None,
        "": None,
    }.items():
        assert origins.context_of(line) == context, line
    assert origins.context_of("Take off", "on") == "on/title"


def test_a_text_is_mended_where_it_stands(library, messages, locales, french, rewrite):
    rewrite({"off/rub/text": None})
    wording = open_wording(library, messages, locales, "fr", BUNDLED_FONTS)
    catalogue = locales / "fr" / "LC_MESSAGES" / "content.po"
    lines = catalogue.read_text(encoding="utf-8").splitlines()
    place = wording.place_of("off/apron-off/text")
    assert place.path == catalogue.as_posix()
    assert lines[place.line - 1] == 'msgctxt "off/apron-off/text"'
    assert (wording.place_of("off/rub/text").path, wording.place_of("off/rub/text").line) == (place.path, 0)
    assert not wording.place_of("off/nothing/text").path
    source = open_wording(library, messages, locales, "en", BUNDLED_FONTS)
    assert source.place_of("library/name") == library.at("name")
    assert not source.place_of("interface/stop").path
