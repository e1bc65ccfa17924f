"""Texts of people inside messages: shortened, and with nothing that a terminal would obey."""

from __future__ import annotations

import unicodedata

LONGEST_QUOTE = 80
"""Characters of a text that a message quotes; more hides what the message says."""

_ISOLATES = dict.fromkeys(map(ord, "\u2066\u2067\u2068\u2069"))
_NO_BREAK_SPACE = {0xA0: " ", 0x202F: " "}
_REORDERING = frozenset("\u202a\u202b\u202c\u202d\u202e\u2028\u2029")
"""Signs that change the order of what stands after them (UAX #9), and separators of lines."""


def quoted(text: str, longest: int = LONGEST_QUOTE) -> str:
    """The text in single quotes, at most ``longest`` characters of it; isolates and ties are left out."""
    plain = text[: 8 * longest].translate(_ISOLATES).translate(_NO_BREAK_SPACE)
    is_cut = len(plain) > longest or len(text) > 8 * longest
    return f"'{plain[: longest - 1].rstrip()}…'" if is_cut else f"'{plain}'"


def shortened(text: str, longest: int) -> str:
    """The text, or its beginning with an ellipsis."""
    return text if len(text) <= longest else f"{text[: longest - 1].rstrip()}…"


def printable(text: str, *, is_line: bool = False) -> str:
    r"""The text with control characters written out, such as ``\x1b``: a terminal must not obey them.

    Also lone surrogates, which stand for bytes of file names that are no UTF-8, and signs that reorder
    a line; isolates, which stand round every value on a sheet, are left out. Ends of lines and tabs stay,
    unless the text is to be one line.
    """
    if text.isascii() and text.isprintable():
        return text
    text = text.translate(_ISOLATES)
    return "".join(sign if _is_harmless(sign, is_line) else _written_out(sign) for sign in text)


def _is_harmless(sign: str, is_line: bool) -> bool:
    if sign in "\n\t":
        return not is_line
    return sign not in _REORDERING and unicodedata.category(sign) not in {"Cc", "Cs"}


def _written_out(sign: str) -> str:
    named = {"\n": "\\n", "\t": "\\t", "\r": "\\r"}.get(sign)
    return named or (f"\\x{ord(sign):02x}" if ord(sign) < 256 else f"\\u{ord(sign):04x}")
