"""What the sheets about pictures are made from: many pictures and no single step."""

from __future__ import annotations

from dataclasses import dataclass, field

from signage.compose.context import LocaleContext
from signage.compose.typesetting import Face
from signage.ground.language import script_of
from signage.model.library import Protocol
from signage.text.font_set import FontSet
from signage.words.wording import MissingMessageError

SHIPPED_LANGUAGE = "en"
"""The language of the sentences of the pictures that ship with the programme."""


@dataclass(frozen=True)
class Meaning:
    """The sentence that stands for a picture, its language and fonts, and whether it is that of the sheet."""

    text: str
    language: str
    fonts: FontSet
    is_translated: bool

    def face(self, weight: int = 400) -> Face:
        """The face for reading on in its language."""
        return Face(self.language, script_of(self.language), self.fonts, weight, is_body=True)


@dataclass(frozen=True)
class PictureContext(LocaleContext):
    """Pictures in one locale. ``protocol`` is the one whose pictures they are, None for a whole library."""

    pictures: tuple[str, ...] = field(kw_only=True)
    protocol: Protocol | None = field(default=None, kw_only=True)

    @property
    def protocols(self) -> tuple[Protocol, ...]:
        """The protocols whose pictures these are."""
        return (self.protocol,) if self.protocol else super().protocols

    @property
    def file_start(self) -> str:
        """What the name of a file begins with."""
        return f"{self.protocol.id}-" if self.protocol else ""

    @property
    def critical_pictures(self) -> frozenset[str]:
        """The pictures of steps where a mistake can hurt."""
        return frozenset(
            step.picture for protocol in self.protocols for step in protocol.steps if step.critical
        )

    def control_items(self) -> list[str]:
        """Owners and the first review date of the protocols that use the pictures, and the library."""
        wording = self.wording
        return [
            *(wording.fixed("owner", role=owner) for owner in self.owners),
            wording.fixed("review-by", date=wording.date(self.review_by)),
            wording.content("library/name"),
        ]

    def meaning(self, name: str) -> Meaning:
        """The sentence of a picture in the language of the sheet, or in the one it was written in.

        Texts of pictures that no step uses are not in the catalogues: they come untranslated.
        """
        tag, fonts = self.wording.tag, self.wording.fonts
        is_own = name in self.picture_set.own_names
        written = self.library.source_locale if is_own else SHIPPED_LANGUAGE
        sentence = self.picture_set.scene(name).alternative
        untranslated = Meaning(sentence, written, fonts, is_translated=False)
        if tag.partition("-")[0] == written.partition("-")[0] and tag == self.library.source_locale:
            return Meaning(sentence, tag, fonts, is_translated=True)
        if tag == self.library.source_locale:
            return untranslated
        try:
            return Meaning(self.wording.content(f"picture/{name}"), tag, fonts, is_translated=True)
        except MissingMessageError:
            return untranslated
