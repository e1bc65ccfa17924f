"""Characters that leave no ink: they make a text look empty, or shorter than it is."""

from __future__ import annotations

import unicodedata

_IGNORABLE_RANGES = (
    (0xAD, 0xAD), (0x34F, 0x34F), (0x61C, 0x61C), (0x115F, 0x1160), (0x17B4, 0x17B5), (0x180B, 0x180F),
    (0x200B, 0x200F), (0x202A, 0x202E), (0x2060, 0x206F), (0x3164, 0x3164), (0xFE00, 0xFE0F),
    (0xFEFF, 0xFEFF), (0xFFA0, 0xFFA0), (0xFFF0, 0xFFF8), (0x1BCA0, 0x1BCA3), (0x1D173, 0x1D17A),
    (0xE0000, 0xE0FFF),
)  # fmt: skip
"""Default_Ignorable_Code_Point (UCD, DerivedCoreProperties.txt)."""

IGNORABLE = frozenset(chr(code) for first, last in _IGNORABLE_RANGES for code in range(first, last + 1))
BRAILLE_BLANK = "\u2800"
"""A pattern without dots: a symbol to Unicode, an empty place to the eye."""


def is_unseen(sign: str) -> bool:
    """Whether a character leaves no ink: space, control, format, default-ignorable or empty pattern."""
    return unicodedata.category(sign)[0] in "ZC" or sign in IGNORABLE or sign == BRAILLE_BLANK


def is_blank(text: str) -> bool:
    """Whether nothing of the text would be seen. An empty text is missing, not blank."""
    return bool(text) and all(is_unseen(sign) for sign in text)
