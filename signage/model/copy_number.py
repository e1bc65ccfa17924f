"""The number of a printed copy, such as ``LB-0017-K``: ward letters, running number, check character."""

from __future__ import annotations

import re
from collections.abc import Iterator

from signage.ground.check_character import ALPHABET, check_character, is_checked
from signage.ground.fingerprint import REVISION_ALPHABET

_SHAPE = re.compile(r"([A-Z]{2})(\d{4,7})([0-9A-Z])")
_LEAST_DIGITS = 4
_AS_LETTER = str.maketrans("01", "OI")
_AS_DIGIT = str.maketrans("OIL", "011")
_SEPARATORS = re.compile(r"[\s\-\u2010-\u2015\u2212·]+")


def ward_letters(ward: str) -> str:
    """Two letters that call a ward to mind: the initials of its id, or the first two letters of one word.

    They need not tell wards apart: running numbers are given once in the whole register.
    """
    words = [word for word in re.split(r"[^a-z]+", ward.lower()) if word]
    letters = "".join(word[0] for word in words[:2]) if len(words) > 1 else "".join(words)
    return f"{letters}XX"[:2].upper()


def copy_number(letters: str, running: int) -> str | None:
    """The number of a copy with its hyphens; None for a running number that is not given to any copy.

    Left out are those that end in a look-alike (0 O, 1 I L, U), and those of which a swap of two neighbours
    would be a valid number too: so every swap, like every single wrong character, is caught.
    """
    start = f"{letters}{running:0{_LEAST_DIGITS}}"
    whole = start + check_character(start)
    if whole[-1] not in REVISION_ALPHABET or any(map(is_checked, _swapped(whole))):
        return None
    return _with_hyphens(whole)


def read_copy_number(text: str) -> str | None:
    """The number that was typed or read off a sheet, in the printed form; None where it cannot be one.

    Hyphens, spaces and case do not matter, nor does O for 0 where only a digit can stand.
    """
    plain = _SEPARATORS.sub("", text).upper()
    plain = plain[:2].translate(_AS_LETTER) + plain[2:-1].translate(_AS_DIGIT) + plain[2:][-1:]
    if _SHAPE.fullmatch(plain) is None or not is_checked(plain):
        return None
    return _with_hyphens(plain)


def slips_of(text: str) -> frozenset[str]:
    """All numbers that a text may have been meant as: one character wrong, or two neighbours swapped."""
    plain = _SEPARATORS.sub("", text).upper()[:12]
    changed = {plain[:index] + sign + plain[index + 1 :] for index in range(len(plain)) for sign in ALPHABET}
    missing = {plain[:index] + sign + plain[index:] for index in range(len(plain) + 1) for sign in ALPHABET}
    doubled = {plain[:index] + plain[index + 1 :] for index in range(len(plain))}
    meant = (read_copy_number(each) for each in changed | missing | doubled | set(_swapped(plain)))
    return frozenset(number for number in meant if number is not None)


def running_number(number: str) -> int:
    """The running number in a number of the printed form."""
    return int(number.split("-")[1])


def _swapped(text: str) -> Iterator[str]:
    for index in range(len(text) - 1):
        if text[index] != text[index + 1]:
            yield text[:index] + text[index + 1] + text[index] + text[index + 2 :]


def _with_hyphens(plain: str) -> str:
    return f"{plain[:2]}-{plain[2:-1]}-{plain[-1]}"
