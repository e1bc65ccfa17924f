"""Stand-in locales: invented languages that show faults of layout and wording before anyone translates.

``en-XA`` is the source text with accents, in brackets and 40 % longer: text without accents was never
translated, a missing bracket was cut off. ``ar-XB`` is the source text in Arabic letters: it runs from
right to left and is shaped by the Arabic fonts. Both are made in memory and never stored.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable

LONGER = 1.4
"""Length of an en-XA text over its source."""

_PLACEHOLDER = re.compile(r"(\{[a-z][a-z_]*\})")
_ACCENTED = str.maketrans(
    "abcdeghijklnorstuwyzABCDEGHIJKLNORSTUWYZ",
    "áƀçďéğĥíĵķļñöŕšţûŵýžÁɃÇĎÉĞĤÍĴĶĻÑÖŔŠŢÛŴÝŽ",
)
_ARABIC = str.maketrans(
    dict(zip("abcdefghijklmnopqrstuvwxyz", "ابثدهفغحيجكلمنوپقرستعڤوخيز", strict=True))
    | {"?": "؟", ",": "،", ";": "؛"}
)
_PADDING_WORD = "ééééé"


def accented(text: str) -> str:
    """The text with accents on its letters, in brackets, and 40 % longer. Placeholders stay whole.

    A text without letters, such as the sign between the items of a list, stays as it is.
    """
    if not _has_letters(text):
        return text
    parts = _PLACEHOLDER.split(text)
    body = "".join(part if i % 2 else part.translate(_ACCENTED) for i, part in enumerate(parts))
    wanted = math.ceil(len(text) * LONGER)
    padding = ""
    while len(body) + len(padding) + 2 < wanted:
        padding += f" {_PADDING_WORD}"
    return f"[{body}{padding}]"


def in_arabic_letters(text: str) -> str:
    """The text letter by letter in Arabic letters, in brackets. Placeholders stay whole."""
    parts = _PLACEHOLDER.split(text)
    body = "".join(part if i % 2 else part.lower().translate(_ARABIC) for i, part in enumerate(parts))
    return f"[{body}]" if _has_letters(text) else body


def _has_letters(text: str) -> bool:
    return any(sign.isalpha() for sign in _PLACEHOLDER.sub("", text))


STAND_INS: dict[str, Callable[[str], str]] = {"en-XA": accented, "ar-XB": in_arabic_letters}
"""The stand-in locales: tag to what makes their text."""

STAND_IN_NAMES = {"en-XA": accented("English"), "ar-XB": in_arabic_letters("Arabic")}
"""What a stand-in calls itself, since CLDR has no name for it."""
