"""Letters that were saved as UTF-8 and read as Windows-1252 or Latin-1: é that became Ã©."""

from __future__ import annotations

import re
import unicodedata

from fontTools.unicodedata import script

from signage.ground.language import script_of

_UNDEFINED = {code: chr(code) for code in (0x81, 0x8D, 0x8F, 0x90, 0x9D)}
"""Bytes that Windows-1252 leaves open; browsers read them as controls (WHATWG, Encoding Standard)."""

_BYTE_OF = {
    **{bytes([code]).decode("cp1252"): code for code in range(0x80, 0x100) if code not in _UNDEFINED},
    **{chr(code): code for code in range(0x80, 0xA0)},
}
_CONTINUATION = "".join(re.escape(sign) for sign, code in _BYTE_OF.items() if code < 0xC0)
_SEQUENCE = re.compile(f"[Â-ß][{_CONTINUATION}]|[à-ï][{_CONTINUATION}]{{2}}|[ð-ô][{_CONTINUATION}]{{3}}")
"""The forms of UTF-8 (RFC 3629, section 4), byte for byte in the letters of Windows-1252."""

_ENDS_A_QUOTE = frozenset("’”…‘“–—»›\u00a0")
"""Signs that may truly follow an accented capital at the end of a word."""

_USUAL_LATIN = re.compile("[\u00a0-\u017f\u1e00-\u1eff\u2000-\u206f\u20ac\u2122\u2190-\u22ff]")


def garbled_part(text: str, tag: str) -> tuple[str, str] | None:
    """The first garbled letter with the letter that it probably was, or None.

    It must read as a letter of the language, or as one of the signs that all languages use.
    """
    if text.isascii():
        return None
    for match in _SEQUENCE.finditer(text):
        raw = bytes(_BYTE_OF[sign] for sign in match.group())
        try:
            meant = raw.decode("utf-8")
        except UnicodeDecodeError:
            continue
        if _is_plausible(meant, tag) and not _is_true_ending(text, match):
            return match.group(), meant
    return None


def _is_plausible(letter: str, tag: str) -> bool:
    if _USUAL_LATIN.fullmatch(letter):
        return True
    if ord(letter) >= 0x1F000:
        return unicodedata.category(letter) == "So"
    return str(script(letter)) == script_of(tag)


def _is_true_ending(text: str, match: re.Match[str]) -> bool:
    """Whether an accented letter ends a word before a quotation mark or ellipsis: ÄLÄ…, not Ã©."""
    first, rest = match.group()[0], match.group()[1:]
    before, after = text[: match.start()][-1:], text[match.end() :][:1]
    is_mark = all(sign in _ENDS_A_QUOTE for sign in rest)
    return is_mark and first not in "ÂÃâ" and before.isupper() and not after.isalpha()
