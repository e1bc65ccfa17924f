"""All that a sheet is made from."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from signage.compose.theme import Tone
from signage.model.choices import StepCondition
from signage.model.library import Action, Fixture, Library, Protocol, Step, Ward
from signage.model.mark import Mark
from signage.model.sign_off import SignedBy, SignOff
from signage.model.training_path import training_path
from signage.pictograms.picture_set import PictureSet
from signage.words.wording import Wording


def container_message(ward: Ward, fixture: Fixture) -> str:
    """The context of the name of a bin or tub."""
    return f"ward/{ward.id}/fixture/{fixture.id}"


@dataclass(frozen=True)
class LocaleContext:
    """What every sheet has: a library in one locale. ``source`` words the draft sentence once more.

    ``copy`` is the number of the copy that is printed, empty for a sheet that nobody counts. ``signed``
    says who has signed a sheet that is released; None on every other.
    """

    library: Library
    wording: Wording
    source: Wording
    picture_set: PictureSet
    revision: str
    tone: Tone = Tone.COLOUR
    mark: Mark = Mark.DRAFT
    copy: str = ""
    signed: SignedBy | None = None

    @property
    def has_state(self) -> bool:
        """Whether it bears a word and a sentence that say what it is: all but a sheet for clinical use."""
        return self.mark is not Mark.NONE

    @property
    def is_draft(self) -> bool:
        """Whether it is not released: a draft or a proof."""
        return not self.mark.is_released

    def state_notes(self) -> tuple[str, ...]:
        """Who signed it and when, or that nobody has verified a translation."""
        wording, signed = self.wording, self.signed
        if self.is_draft:
            return () if self.is_source_language else (wording.fixed("translation-unverified"),)
        if signed is None:
            return ()
        lines = [self._signed("signed-by" if signed.is_one else "steps-signed-by", signed.steps)]
        if not signed.is_one:
            lines.append(self._signed("words-signed-by", signed.words))
        if not signed.is_verified:
            lines.append(wording.fixed("role-declared"))
        return tuple(lines)

    def _signed(self, text: str, sign_off: SignOff) -> str:
        wording = self.wording
        return wording.fixed(text, role=wording.code(sign_off.role), date=wording.date(sign_off.on))

    @property
    def is_source_language(self) -> bool:
        """Whether the sheet is in the language of its authors."""
        return self.wording.tag == self.source.tag

    @property
    def protocols(self) -> tuple[Protocol, ...]:
        """The protocols that it is about: of sheets of a whole library, all."""
        return tuple(self.library.protocols.values())

    @property
    def owners(self) -> tuple[str, ...]:
        """The translated roles of those who own its protocols, each once."""
        return tuple(dict.fromkeys(self.wording.content(f"{each.id}/owner") for each in self.protocols))

    @property
    def review_by(self) -> date:
        """The first day on which one of its protocols must be reviewed."""
        return min(protocol.review_by for protocol in self.protocols)


@dataclass(frozen=True)
class SheetContext(LocaleContext):
    """One protocol in one locale."""

    protocol: Protocol = field(kw_only=True)

    @property
    def protocols(self) -> tuple[Protocol, ...]:
        """The protocol alone."""
        return (self.protocol,)

    @property
    def ward(self) -> Ward:
        """The ward of the protocol."""
        return self.library.wards[self.protocol.ward]

    def zone_name(self, zone: str) -> str:
        """The translated name of a zone."""
        return self.wording.content(f"ward/{self.ward.id}/zone/{zone}")

    def garment_name(self, garment: str) -> str:
        """The translated name of an item of kit."""
        return self.wording.content(f"kit/{garment}/name")

    def containers(self, step: Step) -> tuple[Fixture, ...]:
        """The bins and tubs that take what the step removes, each once, in the order of its movements."""
        named = dict.fromkeys(action.bin for action in step.actions if action.bin)
        return tuple(self.ward.fixtures[name] for name in named if name in self.ward.fixtures)

    def container_name(self, fixture: Fixture) -> str | None:
        """The translated name of a bin or tub that no letter tells from others; None where it has a letter.

        A plain word such as ``bin`` where it has neither.
        """
        if fixture.code:
            return None
        if fixture.name is None:
            return self.container_word(fixture)
        return self.wording.content(container_message(self.ward, fixture))

    def container_word(self, fixture: Fixture) -> str:
        """The plain word for the kind of container: bin or tub."""
        return self.wording.fixed("tub" if fixture.kind == "tub" else "bin")

    def condition_words(self, step: Step) -> str | None:
        """When a conditional step is done, such as ``Only if soiled``; None for a step that always is."""
        return None if step.when is StepCondition.ALWAYS else self.wording.fixed(step.when)

    def step_seconds(self, step: Step) -> int | None:
        """The seconds of the step: of its first movement that has a time of its own."""
        return next((action.seconds for action in step.actions if action.seconds is not None), None)

    def untold_time(self, step: Step) -> str | None:
        """The time of a step in short words, where neither its headline nor its detail says it."""
        seconds = self.step_seconds(step)
        if seconds is None:
            return None
        time = self.wording.seconds(seconds)
        texts = (self.wording.step_text(self.protocol, step, field) for field in ("text", "detail"))
        return None if any(text and time in text for text in texts) else time

    def picture_words(self, step: Step) -> str:
        """The alternative text of a step's picture."""
        return self.wording.content(f"picture/{step.picture}")

    def training_link(self, step: Step | None = None) -> str:
        """The address behind the QR code; its path alone finds the page on a static server.

        The number of a copy goes without its hyphens, for each sign can make the code coarser to scan.
        """
        base = self.library.training_address.rstrip("/")
        copy = f"&c={self.copy.replace('-', '')}" if self.copy else ""
        return f"{base}{training_path(self.wording.tag, self.protocol, step)}?r={self.revision}{copy}"

    def revision_words(self) -> str:
        """Such as ``r1 · 3YH6-K2MP``, kept left-to-right in every script."""
        return self.wording.code(f"r{self.protocol.revision} · {self.revision}")

    def seconds(self, action: Action) -> str | None:
        """The time of an action in short words, where it has one."""
        return None if action.seconds is None else self.wording.seconds(action.seconds)
