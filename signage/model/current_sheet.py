"""What is released of a protocol in a language: what every printed copy is held against."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class CurrentSheet:
    """The released sheets of a protocol in a language on a day.

    ``hash`` is the full fingerprint of what was signed last, None where nothing is in force; ``code`` is
    printed for it, and ``since`` the day of its sign-off. ``may_be_drawn``: what is drawn today is that,
    released, or a demonstration where the library is one. ``may_be_mounted``: a copy that was drawn as that
    may hang, also while its content is being worked on for the next revision.
    """

    subject: str
    locale: str
    hash: str | None
    code: str = ""
    since: date | None = None
    is_withdrawn: bool = False
    may_be_mounted: bool = False
    may_be_drawn: bool = False


CurrentSheets = Mapping[tuple[str, str], CurrentSheet]
"""By protocol and language; what is not there was never released."""
