"""Placeholders such as ``{time}`` in texts, and the isolates that inserted values stand in."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping

FIRST_STRONG_ISOLATE = "\u2068"
LEFT_TO_RIGHT_ISOLATE = "\u2066"
POP_ISOLATE = "\u2069"
ISOLATE_STARTS = frozenset("\u2066\u2067\u2068")

_PLACEHOLDER = re.compile(r"\{([a-z][a-z_]*)\}")


class StrayBraceError(ValueError):
    """A text holds a brace outside any placeholder; carries the text."""


def placeholder_names(text: str) -> Counter[str]:
    """How often each placeholder stands in the text."""
    return Counter(_PLACEHOLDER.findall(text))


def without_placeholders(text: str) -> str:
    """The text with a line break in place of each placeholder, so that the words beside it stay apart."""
    return _PLACEHOLDER.sub("\n", text)


def has_stray_brace(text: str) -> bool:
    """Whether a brace stands in the text that belongs to no placeholder."""
    return any(brace in without_placeholders(text) for brace in "{}")


def isolate(value: str) -> str:
    """The value in a first-strong isolate (UAX #9, section 2.7), so that text round it keeps its order."""
    if value[:1] in ISOLATE_STARTS and value.endswith(POP_ISOLATE) and value.count(POP_ISOLATE) == 1:
        return value
    return f"{FIRST_STRONG_ISOLATE}{value}{POP_ISOLATE}"


def isolate_code(text: str) -> str:
    """A code, which reads from left to right in every language, in an isolate of that direction."""
    return f"{LEFT_TO_RIGHT_ISOLATE}{text}{POP_ISOLATE}"


def fill(text: str, values: Mapping[str, str]) -> str:
    """The text with each placeholder replaced by its isolated value.

    Raises KeyError with the name of a placeholder that has no value, and StrayBraceError for a brace that
    belongs to no placeholder: it would be printed as it is.
    """
    if has_stray_brace(text):
        raise StrayBraceError(text)
    return _PLACEHOLDER.sub(lambda match: isolate(values[match.group(1)]), text)


def has_unpaired_isolate(text: str) -> bool:
    """Whether an isolate is opened and not closed, or closed and not opened, within the text."""
    depth = 0
    for character in text:
        if character in ISOLATE_STARTS:
            depth += 1
        elif character == POP_ISOLATE:
            depth -= 1
            if depth < 0:
                return True
    return depth != 0
