"""Where a library stands on a day: every protocol in every language, and what needs whom."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from signage.model.mark import Mark


@dataclass(frozen=True, slots=True)
class WordCount:
    """How many texts are not there, doubtful, translated but checked by nobody, and checked."""

    missing: int = 0
    doubtful: int = 0
    translated: int = 0
    checked: int = 0

    @property
    def total(self) -> int:
        """All of them."""
        return self.missing + self.doubtful + self.translated + self.checked

    @property
    def are_complete(self) -> bool:
        """Whether every text may be printed."""
        return not self.missing and not self.doubtful

    def as_json(self) -> dict[str, int]:
        """The fields of the contract."""
        return {
            "missing": self.missing,
            "doubtful": self.doubtful,
            "translated": self.translated,
            "checked": self.checked,
        }


@dataclass(frozen=True, slots=True)
class FindingCount:
    """How many findings of each severity nobody has excused."""

    s1: int = 0
    s2: int = 0
    s3: int = 0

    def as_json(self) -> dict[str, int]:
        """The fields of the contract."""
        return {"S1": self.s1, "S2": self.s2, "S3": self.s3}


@dataclass(frozen=True, kw_only=True)
class SheetStatus:
    """A protocol in a language. ``mark`` is what a draw would print, a proof where it was asked for.

    ``signed_by`` and ``signed_on`` are of the words, or of the steps where nobody has signed the words;
    None where neither is signed. ``revision`` is the code that would be printed, None where words are
    missing; ``can_be_read`` is False where the files of its words cannot be. ``mounted`` copies hang or are
    with learners; ``obsolete`` of them show what is no longer so.
    """

    locale: str
    words: WordCount
    mark: Mark
    can_be_read: bool = True
    is_in_use: bool = True
    is_withdrawn: bool = False
    is_order_signed: bool = False
    are_words_signed: bool = False
    has_changed: bool = False
    signed_by: str | None = None
    signed_on: date | None = None
    revision: str | None = None
    mounted: int = 0
    obsolete: int = 0
    reasons: tuple[str, ...] = ()

    @property
    def is_signed(self) -> bool:
        """Whether the steps and the words are signed, whatever has changed since."""
        return self.is_order_signed and self.are_words_signed

    def as_json(self, review_by: date) -> dict[str, object]:
        """The fields of the contract."""
        return {
            "words": self.words.as_json(),
            "mark": self.mark.value,
            "withdrawn": self.is_withdrawn,
            "signed_by": self.signed_by,
            "signed_on": self.signed_on.isoformat() if self.signed_on else None,
            "review_by": review_by.isoformat(),
            "revision": self.revision,
            "mounted": self.mounted,
            "obsolete": self.obsolete,
            "reasons": list(self.reasons),
        }


@dataclass(frozen=True, kw_only=True)
class ProtocolStatus:
    """A protocol in all languages. ``unseen`` of its sheets no check has looked at as they are."""

    id: str
    code: str
    title: str
    owner: str
    review_by: date
    path: str
    findings: FindingCount
    sheets: tuple[SheetStatus, ...]
    unseen: int = 0

    def as_json(self) -> dict[str, object]:
        """The fields of the contract."""
        return {
            "id": self.id,
            "title": self.title,
            "review_by": self.review_by.isoformat(),
            "findings": self.findings.as_json(),
            "sheets_not_looked_at": self.unseen,
            "locales": {each.locale: each.as_json(self.review_by) for each in self.sheets},
        }


@dataclass(frozen=True, kw_only=True)
class LanguageStatus:
    """A language of the library; its texts are counted once, however many protocols show them.

    ``fault`` is why the files of its words cannot be read, empty where they can.
    """

    tag: str
    name: str
    owner: str
    is_in_use: bool
    words: WordCount
    path: str
    fault: str = ""


@dataclass(frozen=True, slots=True)
class Task:
    """Something to do: which role, what, in which file and with which command; either may be empty."""

    role: str
    what: str
    path: str = ""
    command: str = ""

    def as_json(self) -> dict[str, str | None]:
        """The fields of the contract."""
        return {
            "role": self.role,
            "what": self.what,
            "path": self.path or None,
            "command": self.command or None,
        }


@dataclass(frozen=True, kw_only=True)
class LibraryStatus:
    """A library on a day; ``source`` is the language of its authors.

    ``strays`` are how many copies hang of protocols, by their ids, or in languages that it no longer has.
    ``fault`` is why no sign-off counts at all, empty where the records are sound. ``tasks``: the most
    pressing first.
    """

    name: str
    source: str
    day: date
    is_demo: bool
    protocols: tuple[ProtocolStatus, ...]
    languages: tuple[LanguageStatus, ...] = ()
    strays: Mapping[str, int] = field(default_factory=dict)
    fault: str = ""
    has_register: bool = False
    tasks: tuple[Task, ...] = ()

    def as_json(self) -> dict[str, object]:
        """The JSON of ``status``."""
        return {
            "day": self.day.isoformat(),
            "demo": self.is_demo,
            "protocols": {each.code: each.as_json() for each in self.protocols},
            "next": [each.as_json() for each in self.tasks],
        }
