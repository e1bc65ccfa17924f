"""Did-you-mean: the known word nearest to one that is not known."""

from collections.abc import Iterable
from collections.abc import Set as AbstractSet
from difflib import get_close_matches

_LONGEST_LIST = 40


def nearest(word: str, known: Iterable[str], cutoff: float = 0.6) -> str | None:
    """The known word most like this one; None where nothing is like it.

    Capital letters, spaces and underscores are taken as an author means them, so ``Review_By`` is
    ``review-by``. Likeness is the ratio of Python's ``difflib``, from 0 to 1.
    """
    choices = sorted(set(known))
    spelt = word[:80].strip().lower().replace("_", "-").replace(" ", "-")
    if spelt in choices:
        return spelt
    matches = get_close_matches(spelt, choices, n=1, cutoff=cutoff)
    return matches[0] if matches else None


def suggest(word: str, known: Iterable[str], what: str = "Known") -> str:
    """A hint for an unknown word: the nearest one, else the known ones, and how many more there are."""
    choices = sorted(known) if isinstance(known, AbstractSet) else list(dict.fromkeys(known))
    match = nearest(word, choices)
    if match is not None:
        return f"Did you mean '{match}'?"
    if not choices:
        return f"{what}: none yet."
    shown = ", ".join(choices[:_LONGEST_LIST])
    more = len(choices) - _LONGEST_LIST
    return f"{what}: {shown} and {more} more." if more > 0 else f"{what}: {shown}."


def shorten(text: str, length: int = 60) -> str:
    """The text as a message quotes it: on one line and not too long."""
    line = " ".join(text.split())
    return line if len(line) <= length else f"{line[: length - 1]}…"
