"""What the pages of a site are made from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from enum import StrEnum

from signage.model.current_sheet import CurrentSheet
from signage.model.library import Library, Protocol, Step, Ward
from signage.model.sign_off import SignedBy
from signage.pages.picture import PagePictures
from signage.pages.words import PageWords

_NAMES = ("library/name",)
"""What pages of one language show of the words of another, beside its name."""


class PageState(StrEnum):
    """What a page says of what it shows, the gravest first; nothing where it shows several approved ones."""

    WITHDRAWN = "withdrawn"
    DRAFT = "draft"
    DEMONSTRATION = "demonstration"
    APPROVED = "approved"
    NONE = ""


@dataclass(frozen=True)
class KnownCopies:
    """The numbers of the copies of a sheet: those that may hang on a wall, and those that must not."""

    good: tuple[str, ...] = ()
    gone: tuple[str, ...] = ()


@dataclass(frozen=True)
class Publication:
    """All content of a site.

    ``words`` are by locale, in the order in which languages are offered. ``revisions`` are the codes as they
    stand, by protocol and language, ``earlier_revisions`` by protocol the codes, or parts of codes, that they
    have replaced. ``approved`` says by protocol and locale who has signed what is no draft, ``withdrawn``
    names what was withdrawn, ``left_out`` what must have no pages. ``made_on`` is printed on every page.
    ``current`` is what is in force, and ``copies`` what the register knew of numbered copies, by protocol and
    language.
    """

    library: Library
    words: Mapping[str, PageWords]
    pictures: PagePictures
    revisions: Mapping[tuple[str, str], str]
    made_on: date
    earlier_revisions: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    approved: Mapping[tuple[str, str], SignedBy] = field(default_factory=dict)
    withdrawn: frozenset[tuple[str, str]] = frozenset()
    left_out: frozenset[tuple[str, str]] = frozenset()
    current: Mapping[tuple[str, str], CurrentSheet] = field(default_factory=dict)
    copies: Mapping[tuple[str, str], KnownCopies] = field(default_factory=dict)

    def protocols(self, tag: str | None = None) -> tuple[Protocol, ...]:
        """The protocols that have pages, in a language or in any, by their codes: P2 before P10."""
        tags = self.words if tag is None else (tag,)
        shown = (
            each
            for each in self.library.protocols.values()
            if any((each.id, language) not in self.left_out for language in tags)
        )
        return tuple(sorted(shown, key=lambda protocol: (len(protocol.code), protocol.code)))

    def in_language(self, tag: str) -> Publication:
        """All that pages of one language are made from: of the others no more than their names."""
        return replace(
            self,
            words={
                each: words if each == tag else PageWords(words.wording.only(_NAMES))
                for each, words in self.words.items()
            },
            revisions={key: code for key, code in self.revisions.items() if key[1] == tag},
            approved={key: signed for key, signed in self.approved.items() if key[1] == tag},
            withdrawn=frozenset(key for key in self.withdrawn if key[1] == tag),
            current={key: sheet for key, sheet in self.current.items() if key[1] == tag},
            copies={key: known for key, known in self.copies.items() if key[1] == tag},
        )

    def languages_of(self, protocol: Protocol) -> tuple[str, ...]:
        """The languages in which a protocol has pages."""
        return tuple(tag for tag in self.words if (protocol.id, tag) not in self.left_out)


@dataclass(frozen=True)
class PageContext:
    """One protocol of a publication in one language."""

    publication: Publication
    protocol: Protocol
    words: PageWords

    @property
    def tag(self) -> str:
        """The language."""
        return self.words.tag

    @property
    def ward(self) -> Ward:
        """The ward of the protocol."""
        return self.publication.library.wards[self.protocol.ward]

    @property
    def revision(self) -> str:
        """The short code that its sheets carry."""
        return self.publication.revisions[self.protocol.id, self.tag]

    @property
    def state(self) -> PageState:
        """Whether the protocol is a draft in this language, approved, or withdrawn."""
        key = (self.protocol.id, self.tag)
        if key in self.publication.withdrawn:
            return PageState.WITHDRAWN
        if key not in self.publication.approved:
            return PageState.DRAFT
        return PageState.DEMONSTRATION if self.publication.library.is_demo else PageState.APPROVED

    @property
    def signed(self) -> SignedBy | None:
        """Who has signed it, where it is in force."""
        key = (self.protocol.id, self.tag)
        return None if key in self.publication.withdrawn else self.publication.approved.get(key)

    @property
    def standing(self) -> str:
        """Whether its sheets are in force: ``current``, ``draft`` or ``withdrawn``."""
        sheet = self.publication.current.get((self.protocol.id, self.tag))
        if sheet is not None and sheet.is_withdrawn:
            return "withdrawn"
        return "draft" if self.state is PageState.DRAFT else "current"

    @property
    def title(self) -> str:
        """The translated title of the protocol."""
        return self.words.content(f"{self.protocol.id}/title")

    def step_headline(self, step: Step) -> str:
        """The translated headline of a step."""
        return self.words.step_text(self.protocol, step, "text") or ""

    def picture_words(self, step: Step) -> str:
        """The alternative text of a step's picture."""
        return self.words.content(f"picture/{step.picture}")
