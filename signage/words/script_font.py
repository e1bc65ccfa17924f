"""Whether any font has the letters of a language, asked with the name that it gives itself."""

from __future__ import annotations

import unicodedata

from signage.ground.errors import MissingFromMachineError, RefusedError
from signage.ground.language import script_of
from signage.text.font_set import FontSet
from signage.text.paragraph import shape_paragraph
from signage.words.numerals import autonym

_NORMAL_WEIGHT = 400


def script_without_font(tag: str, fonts: FontSet) -> str | None:
    """A sentence about a language whose script no font of the programme or the library shows, or None."""
    name = autonym(tag)
    if name.isascii():
        return None
    try:
        missing = {glyph.character for glyph in shape_paragraph(name, tag, _NORMAL_WEIGHT, fonts).missing}
    except (MissingFromMachineError, RefusedError):
        return None
    letters = {sign for sign in name if unicodedata.category(sign).startswith("L")}
    if not letters or not letters <= {sign for cluster in missing for sign in cluster}:
        return None
    return f"no font has the letters of {tag} (script {script_of(tag)}), such as those of its name, {name}"
