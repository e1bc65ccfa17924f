"""A text cut into items: stretches of one script, one direction and one font."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache, lru_cache

from fontTools import unicodedata as font_unicode

from signage.ground.glyphs import FontKey
from signage.ground.language import language_of, script_of
from signage.text.bidi import bidi_class, levels
from signage.text.breaks import FORCED_BREAKS, grapheme_ends
from signage.text.font_set import FontSet
from signage.text.fonts import Face, face, font_for

DEFAULT_IGNORABLE = frozenset(
    map(chr, [0xAD, 0x34F, 0x61C, 0x180E, 0xFEFF, *range(0x200B, 0x2010), *range(0x202A, 0x202F)])
) | frozenset(map(chr, [*range(0x2060, 0x2070), *range(0xFE00, 0xFE10), *range(0x180B, 0x180E)]))
"""Characters without a shape of their own that occur in text (Default_Ignorable_Code_Point of the UCD)."""

_WITHOUT_OWN_SCRIPT = frozenset({"Zyyy", "Zinh", "Zzzz"})
_TURNS_LEFT_TO_RIGHT_TEXT = frozenset({"R", "AL", "AN", "RLE", "RLO", "RLI"})
_TURNS_RIGHT_TO_LEFT_TEXT = frozenset(
    {"L", "EN", "AN", "LRE", "LRO", "RLE", "RLO", "PDF", "LRI", "RLI", "FSI", "PDI", "B"}
)
"""Bidi classes without which all characters of a paragraph stand in its direction (UAX #9, I1 and I2)."""

_HAN_SCRIPTS = frozenset({"Hani", "Hira", "Kana", "Hang", "Bopo"})
_LETTERS_OF = {"Hans": "Hani", "Hant": "Hani", "Jpan": "Hani", "Kore": "Hang", "Aran": "Arab"}
"""The script of single letters, for scripts that ISO 15924 names as a whole with their style or mixture."""


@dataclass(frozen=True, slots=True)
class Item:
    """``text[start:end]`` of one script (ISO 15924), one embedding level and one font."""

    start: int
    end: int
    level: int
    script: str
    font: FontKey


@cache
def script_of_character(character: str) -> str | None:
    """The script (ISO 15924), or None for characters that many scripts share."""
    script = font_unicode.script(character)
    return None if script in _WITHOUT_OWN_SCRIPT else str(script)


@cache
def _home_script(language: str) -> str:
    """The script of the letters of a language."""
    script = script_of(language)
    return _LETTERS_OF.get(script, script)


def itemize(text: str, language: str, weight: int, base_level: int, fonts: FontSet) -> list[Item]:
    """The items of the text in logical order; characters that force a line break belong to none."""
    characters = frozenset(text)
    simple = _one_item(text, characters, language, weight, base_level)
    if simple is not None:
        return simple
    return _many_items(text, language, weight, base_level, fonts)


def _one_item(
    text: str, characters: frozenset[str], language: str, weight: int, base_level: int
) -> list[Item] | None:
    """The fast path: one script, one direction, all in one font."""
    if not text or not characters.isdisjoint(FORCED_BREAKS):
        return None
    scripts = {script_of_character(character) for character in characters} - {None}
    if len(scripts) > 1 or not _runs_one_way(characters, base_level):
        return None
    script = next(iter(scripts)) if scripts else _home_script(language)
    assert script is not None
    font = font_for(_font_script(script, language), weight)
    if not all(face(font).covers(character) for character in characters - DEFAULT_IGNORABLE):
        return None
    return [Item(0, len(text), base_level, script, font)]


def _runs_one_way(characters: Iterable[str], base_level: int) -> bool:
    """Whether nothing in a paragraph of level 0 or 1 runs against it."""
    turning = _TURNS_RIGHT_TO_LEFT_TEXT if base_level else _TURNS_LEFT_TO_RIGHT_TEXT
    return turning.isdisjoint(map(bidi_class, characters))


def _many_items(text: str, language: str, weight: int, base_level: int, fonts: FontSet) -> list[Item]:
    is_one_way = _runs_one_way(frozenset(text), base_level)
    embedding = [base_level] * len(text) if is_one_way else levels(text, base_level)
    scripts = _resolved_scripts(text, language)
    items: list[Item] = []
    start, item_start = 0, 0
    current: tuple[int, str, FontKey] | None = None
    for end in grapheme_ends(text):
        cluster, script, level = text[start:end], scripts[start], embedding[start]
        found: tuple[int, str, FontKey] | None = None
        if cluster[0] not in FORCED_BREAKS:
            font = _font_of_cluster(cluster, _font_script(script, language), weight, fonts)
            if current is not None and font != current[2] and _stays_in(current[2], cluster):
                font = current[2]
            found = (level, script, font)
        if found != current:
            if current is not None:
                items.append(Item(item_start, start, *current))
            item_start, current = start, found
        start = end
    if current is not None:
        items.append(Item(item_start, start, *current))
    return items


@cache
def _font_script(script: str, language: str) -> str:
    """Han characters have national forms: the font follows the language."""
    if script not in _HAN_SCRIPTS:
        return script
    primary = language_of(language)
    if primary in {"ja", "ko"}:
        return {"ja": "Jpan", "ko": "Kore"}[primary]
    is_traditional = script_of(language) == "Hant" or language[-3:].upper() in {"-TW", "-HK", "-MO"}
    return "Hant" if script == "Hani" and is_traditional else script


def _resolved_scripts(text: str, language: str) -> list[str]:
    """The script of each character; shared ones take the script before them, at the start the one after.

    A sign that only some scripts share, such as the danda, never takes another one (UAX #24, section 4.2).
    """
    own = [script_of_character(character) for character in text]
    current = next((script for script in own if script), _home_script(language))
    resolved: list[str] = []
    for character, script in zip(text, own, strict=True):
        current = script or current
        sharing = _sharing_scripts(character)
        if script is None and sharing and current not in sharing:
            home = _home_script(language)
            resolved.append(home if home in sharing else min(sharing))
        else:
            resolved.append(current)
    return resolved


@cache
def _sharing_scripts(character: str) -> frozenset[str]:
    """The scripts that share a sign (Script_Extensions of the UCD); empty where all do."""
    return frozenset(map(str, font_unicode.script_extension(character))) - _WITHOUT_OWN_SCRIPT


@lru_cache(maxsize=8192)
def _font_of_cluster(cluster: str, script: str, weight: int, fonts: FontSet) -> FontKey:
    """The first font that shows the whole cluster: that of its script, then the fallback fonts."""
    visible = _visible_part(cluster)
    own = font_for(script, weight)
    chain = (own, *fonts.fallback_fonts(weight))
    return next((font for font in chain if face(font).covers(visible)), own)


@lru_cache(maxsize=4096)
def _stays_in(font: FontKey, cluster: str) -> bool:
    """Whether a cluster without ink stays in the font before it."""
    visible = _visible_part(cluster)
    return (not visible or visible.isspace()) and face(font).covers(visible)


def _visible_part(cluster: str) -> str:
    return "".join(character for character in cluster if character not in DEFAULT_IGNORABLE)


def uncovered(text: str, item_face: Face) -> list[str]:
    """Characters of a text that the font has no glyph for, ignorable ones left out."""
    return [
        character
        for character in text
        if character not in DEFAULT_IGNORABLE and not item_face.covers(character)
    ]
