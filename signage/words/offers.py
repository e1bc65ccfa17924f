"""Translations that are there already, for texts that have none: offered as doubtful, never printed.

A step or protocol whose id was changed leaves its texts behind under the old id; the same sentence stands
in several steps; the programme brings its own fixed words. A person decides whether the translation is
right in its new place, by taking the mark ``fuzzy`` away.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from signage.words.catalogue import FUZZY, Entry
from signage.words.marks import MACHINE, withdraw_checks

_OFFERED = " offered from "
_OF_THE_PROGRAMME = "the words that the programme brings"


class Donors:
    """The entries that may lend their translation.

    ``vanished`` are those whose text is no longer there, ``live`` the others of the catalogue, ``shipped``
    those that the programme brings, by context.
    """

    def __init__(
        self, vanished: Sequence[Entry], live: Sequence[Entry], shipped: Mapping[str, Entry]
    ) -> None:
        self._vanished = _by_source(vanished)
        self._live = _by_source(entry for entry in live if not entry.is_doubtful)
        self._shipped = shipped

    def offer(self, blank: Entry) -> Entry:
        """The entry with a translation of the same source text, doubtful; unchanged where there is none."""
        comments = without_offer(blank.comments)
        renamed = self._vanished.get(blank.source, [])
        if renamed:
            donor = max(renamed, key=lambda entry: _likeness(entry.context, blank.context))
            comments += withdraw_checks(without_offer(donor.comments))
            return _offered(blank, donor, comments, donor.context)
        shipped = self._shipped.get(blank.context)
        if shipped is not None and shipped.source == blank.source:
            return _offered(blank, shipped, comments + shipped.comments, _OF_THE_PROGRAMME)
        alike = self._live.get(blank.source, [])
        if alike:
            donor = _commonest(alike, blank)
            origin = (MACHINE,) if donor.marks.is_machine else ()
            return _offered(blank, donor, comments + origin, donor.context)
        return blank


def without_offer(comments: Iterable[str]) -> tuple[str, ...]:
    """The comments without the one that says where an offered translation came from."""
    return tuple(comment for comment in comments if not comment.startswith(_OFFERED))


def _by_source(entries: Iterable[Entry]) -> dict[str, list[Entry]]:
    found: dict[str, list[Entry]] = {}
    for entry in entries:
        if entry.translation.strip():
            found.setdefault(entry.source, []).append(entry)
    return found


def _offered(blank: Entry, donor: Entry, comments: tuple[str, ...], where: str) -> Entry:
    flags = (FUZZY, *(flag for flag in blank.flags if flag != FUZZY))
    return replace(
        blank,
        translation=donor.translation,
        flags=flags,
        comments=tuple(dict.fromkeys((*comments, f"{_OFFERED}{where}"))),
    )


def _likeness(old: str, new: str) -> tuple[int, int]:
    """How many parts two contexts share, counted from the end; then from the beginning."""
    ours, theirs = old.split("/"), new.split("/")
    from_end = sum(a == b for a, b in zip(reversed(ours), reversed(theirs), strict=False))
    return from_end, sum(a == b for a, b in zip(ours, theirs, strict=False))


def _commonest(entries: Sequence[Entry], blank: Entry) -> Entry:
    """The entry whose translation most have, those of the same kind of text first; then the first."""
    field = blank.context.rsplit("/", 1)[-1]
    same = [entry for entry in entries if entry.context.rsplit("/", 1)[-1] == field] or entries
    counted = Counter(entry.translation for entry in same)
    return max(same, key=lambda entry: counted[entry.translation])
