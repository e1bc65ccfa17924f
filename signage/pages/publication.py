"""What the pages of a site are made from."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date

from signage.model.library import Library, Protocol, Step, Ward
from signage.pages.words import PageWords


@dataclass(frozen=True)
class Publication:
    """All content of a site.

    ``words`` are by locale, in the order in which languages are offered. ``revisions`` are the codes of the
    protocols as they stand, ``earlier_revisions`` the codes that they have replaced, both by protocol.
    ``approved`` names protocol and locale of what is no draft. ``made_on`` is printed on every page.
    """

    library: Library
    words: Mapping[str, PageWords]
    revisions: Mapping[str, str]
    made_on: date
    earlier_revisions: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    approved: frozenset[tuple[str, str]] = frozenset()
    is_left_out: Callable[[Protocol], bool] = lambda _protocol: False

    def protocols(self) -> tuple[Protocol, ...]:
        """The protocols that have pages, by their codes: P2 before P10."""
        shown = (each for each in self.library.protocols.values() if not self.is_left_out(each))
        return tuple(sorted(shown, key=lambda protocol: (len(protocol.code), protocol.code)))


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
        return self.publication.revisions[self.protocol.id]

    @property
    def is_draft(self) -> bool:
        """Whether nobody has signed the protocol in this language."""
        return (self.protocol.id, self.tag) not in self.publication.approved

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
