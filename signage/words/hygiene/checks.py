"""Whether a text is clean, whatever it says: characters that are junk, unseen or out of place."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from signage.ground.quotation import quoted
from signage.text.font_set import FontSet
from signage.words.hygiene.drawn_signs import faults_of_shaping
from signage.words.hygiene.joiners import misplaced
from signage.words.hygiene.letters import faults_of_letters
from signage.words.hygiene.mojibake import garbled_part
from signage.words.hygiene.settable import LONGEST_TEXT, MOST_MARKS, has_piled_marks
from signage.words.hygiene.unseen import IGNORABLE, is_blank
from signage.words.placeholders import without_placeholders

Fault = tuple[str, str]
"""Code of the rule and what was found."""

_MARKUP = re.compile(
    r"</?[A-Za-z!][^<>]{0,200}>"  # tags
    r"|&(?:#\d{1,7}|#[xX][0-9A-Fa-f]{1,6}|[A-Za-z][A-Za-z0-9]{1,30});"  # entities
    r"|\*\*|__|`|~~"  # marks of emphasis
    r"|\\[nrtu\"']|\\x[0-9A-Fa-f]{2}"  # escapes
    r"|%(?:\d{1,2}\$)?[sd](?![^\W\d_])|%\([a-z_]+\)[sd]|\$\{"  # format signs
)
_NOT_CHARACTERS = frozenset({"Co", "Cn", "Cs"})
_REPLACEMENTS = frozenset("\ufffc\ufffd\ufff9\ufffa\ufffb")
_LOST = re.compile(r"\?{2,}|(?<=[^\W\d_])\?(?=[^\W\d_])|\?[.,;:]|(?<!\S)\?(?=[^\W\d_])")
"""Question marks in a row, inside a word, before another stop, or before a word."""
_GOES_ON = re.compile(r"\?\s+(?=[a-zß-ÿ])")
"""A question mark after which the sentence goes on in small letters."""
_REMINDERS = re.compile(r"\b(?:TODO|FIXME|XXX+|xxx+|TBD)\b|\(\?\)|\[\?\]")
_REMINDER_WORDS = re.compile(
    r"lorem ipsum|translation missing|missing translation|not (?:yet )?translated|untranslated"
    r"|to be translated|needs translation|translate me|placeholder text",
    re.IGNORECASE,
)
_ELLIPSIS = re.compile(r"^\s*(?:…|\.{2,}|⋯)|(?:…|\.{2,}|⋯)\s*$")
_BREAKS = re.compile("[\t\n\x0b\x0c\r\x85\u2028\u2029]")
_SPACES = "[ \u00a0\u1680\u2000-\u200a\u202f\u205f\u3000]"
_OUTER_SPACE = re.compile(f"^{_SPACES}|{_SPACES}$")
_TWO_SPACES = re.compile(f"{_SPACES}{{2}}")
_PRESENTATION = re.compile(
    "[\ufb00-\ufb06\ufb13-\ufb17\ufb1d-\ufb4f\ufb50-\ufbb1\ufbd3-\ufd3d\ufd50-\ufdc7\ufdf0-\ufdf9\ufe70-\ufefc"
    "\uff21-\uff3a\uff41-\uff5a\U0001d400-\U0001d7ff]"
)
"""Alphabetic presentation forms, Arabic presentation forms A and B, fullwidth letters, mathematical letters;
each has its letter as compatibility decomposition (UCD). Whole-word signs U+FDFA to U+FDFF are left alone."""
_QUOTES = {
    "«": "»", "»": "«", "“": "”", "”": "”", "„": "“”", "‘": "’", '"': '"', "'": "'", "‹": "›", "「": "」",
}  # fmt: skip


def faults_of_text(text: str, tag: str, fonts: FontSet, source: str | None = None) -> Iterator[Fault]:
    """All faults of clean text in one text of a language; ``source`` is None where it is a source text.

    Rules WD-21 to WD-34, WD-37 and WD-38. What the source holds too is not held against a translation.
    """
    if is_blank(text):
        return
    if len(text) > LONGEST_TEXT:
        yield "WD-38", f"the text has {len(text)} characters; sheets have room for {LONGEST_TEXT} at most"
        text = text[:LONGEST_TEXT]
    yield from _faults_of_characters(text, source, tag)
    letters = tuple(faults_of_letters(text, tag))
    yield from letters
    if all(code != "WD-32" for code, _ in letters):
        yield from faults_of_shaping(text, tag, fonts)


def _faults_of_characters(text: str, source: str | None, tag: str) -> Iterator[Fault]:
    bare = without_placeholders(text)
    yield from _junk(bare, source or "", tag)
    yield from _unfinished(text, source)
    yield from _spacing(text, source or "")
    yield from _unseen(text, tag)
    yield from _marks(bare)
    if _is_quoted(text) and not _is_quoted(source or ""):
        yield "WD-34", f"quotation marks stand round the whole text {quoted(text)}"


def _junk(text: str, source: str, tag: str) -> Iterator[Fault]:
    markup = _MARKUP.search(text)
    if markup is not None and markup.group() not in source:
        yield "WD-21", f"{quoted(markup.group())} stands in the text"
    spoiled = next((sign for sign in text if _is_no_character(sign)), None)
    garbled = garbled_part(text, tag)
    if spoiled is not None:
        yield "WD-22", f"the code U+{ord(spoiled):04X} stands where a letter was"
    elif garbled is not None:
        yield "WD-22", f"{quoted(garbled[0])} is probably {quoted(garbled[1])}"
    lost = _LOST.search(text) or (None if "?" in source else _GOES_ON.search(text))
    if lost is not None and _LOST.search(source) is None:
        around = text[max(0, lost.start() - 12) : lost.end() + 12].strip()
        yield "WD-23", f"letters are missing in {quoted(around)}"


def _unfinished(text: str, source: str | None) -> Iterator[Fault]:
    found = _REMINDERS.search(text) or _REMINDER_WORDS.search(text)
    if found is not None and found.group() not in (source or ""):
        yield "WD-24", f"{quoted(found.group())} is a reminder, not a text"
    elif not _says_something(text) and (source is None or _says_something(source)):
        yield "WD-24", f"{quoted(text)} holds no word"
    elif source is not None and _ELLIPSIS.search(text) and not _ELLIPSIS.search(source):
        yield "WD-24", f"{quoted(text)} breaks off, the source text does not"


def _spacing(text: str, source: str) -> Iterator[Fault]:
    broken = _BREAKS.findall(text)
    if len(broken) > len(_BREAKS.findall(source)):
        what = "a tab" if "\t" in broken else "a line break"
        yield "WD-25", f"{what} stands in the text"
    if _OUTER_SPACE.search(text) and not _OUTER_SPACE.search(source):
        yield "WD-26", f"a space stands outside {quoted(text.strip())}"
    elif _TWO_SPACES.search(text) and not _TWO_SPACES.search(source):
        yield "WD-26", f"two spaces stand in a row in {quoted(text)}"


def _unseen(text: str, tag: str) -> Iterator[Fault]:
    hidden = next((sign for sign in text if _is_tag_character(sign)), None)
    if hidden is not None:
        yield "WD-29", f"the hidden character U+{ord(hidden):05X} stands in the text"
    index = misplaced(text, tag)
    if index is not None:
        name = unicodedata.name(text[index], "without a name").lower()
        yield "WD-27", f"the character U+{ord(text[index]):04X} ({name}) stands at position {index + 1}"
    form = _PRESENTATION.search(text)
    if form is not None:
        letters = unicodedata.normalize("NFKC", form.group())
        yield "WD-28", f"U+{ord(form.group()):04X} stands in place of '{letters}'"


def _marks(text: str) -> Iterator[Fault]:
    if has_piled_marks(text):
        yield "WD-31", f"more than {MOST_MARKS} marks stand on one letter"
        return
    before = ""
    for sign in unicodedata.normalize("NFC", text):
        if sign == before and unicodedata.category(sign) in {"Mn", "Mc"}:
            yield "WD-31", f"the sign U+{ord(sign):04X} stands twice on one letter"
            return
        before = sign


def _says_something(text: str) -> bool:
    """Whether a text has a letter, a number or a placeholder."""
    return text != without_placeholders(text) or any(unicodedata.category(sign)[0] in "LN" for sign in text)


def _is_quoted(text: str) -> bool:
    """Whether one pair of quotation marks stands round all of the text."""
    text = text.strip()
    closing = _QUOTES.get(text[:1], "")
    if len(text) <= 2 or text[-1] not in closing:
        return False
    opening, last = text[0], text[-1]
    if opening == last:
        return opening not in text[1:-1]
    depth = 0
    for place, sign in enumerate(text):
        depth += (sign == opening) - (sign == last)
        if depth == 0:
            return place == len(text) - 1
    return False


def _is_no_character(sign: str) -> bool:
    is_none = sign in _REPLACEMENTS or unicodedata.category(sign) in _NOT_CHARACTERS
    return is_none and not _is_tag_character(sign) and sign not in IGNORABLE


def _is_tag_character(sign: str) -> bool:
    return "\U000e0000" <= sign <= "\U000e0fff"
