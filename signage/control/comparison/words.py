"""Two texts of one language held against each other word by word."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from signage.control.comparison.edition import Edition
from signage.text.breaks import line_opportunities


class Fate(StrEnum):
    """What became of words."""

    SAME = "same"
    OUT = "out"
    IN = "in"


@dataclass(frozen=True, slots=True)
class Piece:
    """Neighbouring words with one fate, with the space between them and behind them."""

    fate: Fate
    text: str


@dataclass(frozen=True)
class TextChange:
    """A text of a language before and after; None where there was, or is, none to print."""

    locale: str
    field: str
    old: str | None
    new: str | None

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """Both texts in one row of words."""
        return word_pieces(self.old or "", self.new or "", self.locale)

    @property
    def exchanges(self) -> tuple[tuple[str, str], ...]:
        """The words that went and those that came in their place; either may be empty."""
        found: list[tuple[str, str]] = []
        before = Fate.SAME
        for piece in self.pieces:
            text = piece.text.strip()
            if piece.fate is Fate.IN and before is Fate.OUT:
                found[-1] = (found[-1][0], text)
            elif piece.fate is not Fate.SAME:
                found.append((text, "") if piece.fate is Fate.OUT else ("", text))
            before = piece.fate
        return tuple(found)

    def as_json(self) -> dict[str, object]:
        """The fields, and the words one by one."""
        return {
            "locale": self.locale,
            "field": self.field,
            "old": self.old,
            "new": self.new,
            "words": [{"fate": piece.fate.value, "text": piece.text} for piece in self.pieces],
        }


def word_pieces(old: str, new: str, language: str) -> tuple[Piece, ...]:
    """The words that stayed, went and came, in order.

    Words end where a line may end (UAX #14, with dictionaries where no spaces are written), so a sign of
    punctuation goes with its word.
    """
    before, after = list(_words(old, language)), list(_words(new, language))
    matcher = difflib.SequenceMatcher(
        None, [each.strip() for each in before], [each.strip() for each in after], autojunk=False
    )
    found: list[Piece] = []
    for kind, start, end, new_start, new_end in matcher.get_opcodes():
        if kind == "equal":
            found.append(Piece(Fate.SAME, "".join(after[new_start:new_end])))
            continue
        if end > start:
            found.append(Piece(Fate.OUT, "".join(before[start:end])))
        if new_end > new_start:
            found.append(Piece(Fate.IN, "".join(after[new_start:new_end])))
    return tuple(found)


def _words(text: str, language: str) -> Iterator[str]:
    start = 0
    for end in line_opportunities(text, language) if text else ():
        yield text[start:end]
        start = end


def text_changes(
    old: Edition, new: Edition, contexts: Iterable[tuple[str, str, str]]
) -> tuple[TextChange, ...]:
    """The texts that differ in a language that both have.

    ``contexts`` are the name of a field and where it stood and stands. A translation that may not be printed
    any more is no change of a text but a gap of its language.
    """
    both = [tag for tag in new.words if tag in old.words]
    found = (
        TextChange(tag, name, old.text(tag, before), new.text(tag, after))
        for name, before, after in contexts
        for tag in both
    )
    source = new.library.source_locale
    return tuple(
        each for each in found if each.old != each.new and (each.new is not None or each.locale == source)
    )
