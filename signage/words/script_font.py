"""Whether any font has the letters of a language, asked with the name that it gives itself, or its script."""

from __future__ import annotations

import sys
import unicodedata
from itertools import islice

from fontTools.unicodedata import Scripts

from signage.ground.errors import MissingFromMachineError, RefusedError
from signage.ground.language import LATIN, script_of
from signage.text.font_set import FontSet
from signage.text.paragraph import shape_paragraph
from signage.words.numerals import autonym

_NORMAL_WEIGHT = 400
_LETTERS = frozenset({"Lo", "Ll"})
_EXAMPLES = 4


def script_without_font(tag: str, fonts: FontSet) -> str | None:
    """A sentence about a language whose script no font of the programme or the library shows, or None."""
    name, script = autonym(tag), script_of(tag)
    if name.isascii():
        shown = first_letters(script) if script != LATIN else ""
        example = f"such as {' '.join(shown)}"
    else:
        shown, example = name, f"such as those of its name, {name}"
    letters = {sign for sign in shown if unicodedata.category(sign).startswith("L")}
    try:
        missing = {glyph.character for glyph in shape_paragraph(shown, tag, _NORMAL_WEIGHT, fonts).missing}
    except (MissingFromMachineError, RefusedError):
        return None
    if not letters or not letters <= {sign for cluster in missing for sign in cluster}:
        return None
    return f"no font has the letters of {tag} (script {script}), {example}"


def first_letters(script: str) -> str:
    """Some letters of a script (ISO 15924); none of one that Unicode writes with the letters of others."""
    ranges = zip(Scripts.RANGES, (*Scripts.RANGES[1:], sys.maxunicode + 1), Scripts.VALUES, strict=True)
    own = (chr(code) for start, end, name in ranges if name == script for code in range(start, end))
    return "".join(islice((sign for sign in own if unicodedata.category(sign) in _LETTERS), _EXAMPLES))
