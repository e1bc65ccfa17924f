"""The gettext rule that tells a number's plural form, made from the plural rules of CLDR."""

from __future__ import annotations

import re
from collections.abc import Iterator

from signage.ground.language import language_of
from signage.words.numerals import cldr_locale

CATEGORIES = ("zero", "one", "two", "few", "many", "other")
"""The plural categories of CLDR in the order that gives gettext its indices (UTS #35, part 3)."""

_WHOLE_NUMBERS = (*range(201), 1000, 1_000_000)
"""Whole numbers among which each category is met that whole numbers have in any language of CLDR."""

_RELATION = re.compile(r"([a-z]) (?:mod (\d+) )?(not )?in (\S+)")

_Ranges = tuple[tuple[int, int], ...]


def plural_forms(tag: str) -> str | None:
    """The header Plural-Forms of a language by CLDR (through Babel), or None for an unknown language.

    gettext counts whole numbers only, so categories that CLDR keeps for fractions or for the short form
    of millions have no form of their own; French has three, its third being that of 1 000 000.
    """
    locale = cldr_locale(language_of(tag))
    if locale is None:
        return None
    rule = locale.plural_form
    met = {rule(number) for number in _WHOLE_NUMBERS}
    categories = [category for category in CATEGORIES if category in met]
    choices = (f"{_condition(rule.rules[name])} ? {index} : " for index, name in enumerate(categories[:-1]))
    expression = "".join((*choices, str(len(categories) - 1)))
    return f"nplurals={len(categories)}; plural={f'({expression})' if len(categories) > 1 else expression};"


def _condition(rule: str) -> str:
    """A rule of CLDR such as ``n mod 10 in 2..4 and v in 0`` as an expression of C over whole numbers."""
    alternatives = (list(_relations(alternative)) for alternative in rule.split(" or "))
    return " || ".join(" && ".join(relations) for relations in alternatives if "0" not in relations)


def _relations(conjunction: str) -> Iterator[str]:
    """What must hold of ``n``; what holds of every whole number is left out, what of none is ``0``."""
    for operand, modulus, negation, listed in _RELATION.findall(conjunction):
        ranges = _ranges(listed)
        if operand in {"n", "i"}:
            yield _comparison(f"n % {modulus}" if modulus else "n", ranges, bool(negation))
        elif any(first == 0 for first, _ in ranges) == bool(negation):  # digits of a fraction, power of ten
            yield "0"


def _ranges(listed: str) -> _Ranges:
    """The ranges of a list such as ``0,1,5..9``, neighbours joined: CLDR writes some both ways."""
    found: list[tuple[int, int]] = []
    for item in listed.split(","):
        first, _, last = item.partition("..")
        start, end = int(first), int(last or first)
        if found and found[-1][1] + 1 == start:
            found[-1] = (found[-1][0], end)
        else:
            found.append((start, end))
    return tuple(found)


def _comparison(number: str, ranges: _Ranges, is_negated: bool) -> str:
    parts = [_outside(number, *each) if is_negated else _inside(number, *each) for each in ranges]
    text = (" && " if is_negated else " || ").join(parts)
    return f"({text})" if len(parts) > 1 and not is_negated else text


def _inside(number: str, first: int, last: int) -> str:
    if first == last:
        return f"{number} == {first}"
    return f"{number} <= {last}" if first == 0 else f"{number} >= {first} && {number} <= {last}"


def _outside(number: str, first: int, last: int) -> str:
    if first == last:
        return f"{number} != {first}"
    return f"{number} > {last}" if first == 0 else f"({number} < {first} || {number} > {last})"
