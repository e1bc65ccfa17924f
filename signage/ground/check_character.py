"""Check characters after ISO/IEC 7064:2003, the hybrid system MOD 37,36."""

from __future__ import annotations

ALPHABET = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
"""The 36 characters by their values."""

_MODULUS = len(ALPHABET)


def check_character(text: str) -> str:
    """The character that ends a string of digits and capital letters.

    Raises ValueError for other characters. Every single wrong character is caught. A swap of two neighbours
    is caught unless their values are consecutive and what stands before them has one value of 36.
    """
    product = _MODULUS
    for sign in text:
        product = _next(product, ALPHABET.index(sign))
    return ALPHABET[(1 - product) % _MODULUS]


def is_checked(text: str) -> bool:
    """Whether the last character is the check character of those before it."""
    return len(text) > 1 and set(text) <= set(ALPHABET) and check_character(text[:-1]) == text[-1]


def _next(product: int, value: int) -> int:
    """One turn of the recursion: the sum modulo 36, or 36 for none, doubled modulo 37."""
    return ((product + value) % _MODULUS or _MODULUS) * 2 % (_MODULUS + 1)
