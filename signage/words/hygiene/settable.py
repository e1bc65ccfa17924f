"""Texts that cannot be set in type at all, not even on a proof: they stand there as a gap."""

from __future__ import annotations

import unicodedata

from signage.words.hygiene.unseen import is_blank

LONGEST_TEXT = 1000
"""Characters; source texts have at most 600, and the longest role a budget of 100."""

MOST_MARKS = 4
"""Marks on one letter; Vietnamese, pointed Hebrew and Tibetan stacks have at most four."""


def reason_not_to_set(text: str) -> str:
    """Why a text cannot be set, as a part of a sentence about it; empty where it can."""
    if is_blank(text):
        return "it holds only spaces or invisible characters"
    if len(text) > LONGEST_TEXT:
        return f"it has {len(text)} characters, and at most {LONGEST_TEXT} can be set"
    if has_piled_marks(text):
        return f"more than {MOST_MARKS} marks stand on one of its letters"
    return ""


def has_piled_marks(text: str) -> bool:
    """Whether more marks stand on one letter than any language writes."""
    if text.isascii():
        return False
    pile = 0
    for sign in unicodedata.normalize("NFC", text):
        category = unicodedata.category(sign)
        if category in {"Mn", "Me"}:
            pile += 1
        elif category != "Cf":  # what is not seen ends no letter
            pile = 0
        if pile > MOST_MARKS:
            return True
    return False
