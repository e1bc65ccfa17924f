"""A loaded library with its words and with what its protocols were found to be."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import date
from functools import cached_property
from pathlib import Path
from typing import Any

from signage.compose.context import SheetContext
from signage.compose.pictures.context import PictureContext
from signage.compose.sheet_kind import SheetKind
from signage.compose.sheet_kinds import SheetKinds, read_sheet_kinds
from signage.compose.theme import Tone
from signage.control.approvals_file import approvals_file
from signage.control.binding import free_code
from signage.control.standing import NO_SIGN_OFFS, SignOffs, judge
from signage.ground.errors import UnreadableInputError
from signage.ground.fingerprint import fingerprint, revision_code
from signage.ground.kept import Kept
from signage.ground.problem import Problem, Severity, with_problems
from signage.load.file_text import shown_path
from signage.load.library import load_library
from signage.model.library import Library, LocaleState, Protocol
from signage.model.mark import Mark
from signage.model.messages import Message, contexts_of_protocol, library_messages
from signage.model.revision import language_content, protocol_content
from signage.model.sign_off import SignedBy, SignOff
from signage.model.vocabulary import Vocabulary
from signage.pictograms.own_scenes import read_own_pictures
from signage.pictograms.picture import NOTHING_KEPT
from signage.pictograms.picture_set import PictureSet
from signage.pictograms.shipped import shipped_names
from signage.rehearse.report import Report, report_on
from signage.rehearse.variations.alternatives import with_marks
from signage.rehearse.variations.study import Study, study_protocol
from signage.text.font_set import FontSet, open_font_set
from signage.words.fixed.interface import SIGN_OFF_CONTEXTS, sheet_contexts
from signage.words.wording import Wording, open_wording, source_texts

LANGUAGES_AT_HAND = 8
"""Languages whose words a project keeps open beside those of its source, however many it has."""


@dataclass(frozen=True)
class Project:
    """Loaded content with its messages.

    ``sign_offs`` are what roles have signed. ``own_kinds`` are kinds of sheet beside those that ship with the
    programme.
    """

    library: Library
    content: Path
    locales: Path
    fonts: FontSet
    picture_set: PictureSet
    sign_offs: SignOffs = NO_SIGN_OFFS
    own_kinds: tuple[SheetKind[Any], ...] = ()
    _wordings: dict[str, Wording] = field(init=False, default_factory=dict, compare=False, repr=False)
    _proofs: dict[str, Wording] = field(init=False, default_factory=dict, compare=False, repr=False)
    _parts: dict[tuple[str, str, bool, bool], Wording] = field(
        init=False, default_factory=dict, compare=False, repr=False
    )
    _codes: dict[tuple[str, str | None], str] = field(
        init=False, default_factory=dict, compare=False, repr=False
    )
    _prints: dict[tuple[str, str | None], str] = field(
        init=False, default_factory=dict, compare=False, repr=False
    )
    _studies: dict[str, Study] = field(init=False, default_factory=dict, compare=False, repr=False)

    @cached_property
    def messages(self) -> tuple[Message, ...]:
        """Every text to translate, pictures' alternative texts last."""
        pictures = self.picture_set.messages(sorted(self._pictures_of_steps))
        return (*library_messages(self.library), *pictures)

    @cached_property
    def _pictures_of_steps(self) -> frozenset[str]:
        steps = (step for protocol in self.library.protocols.values() for step in protocol.steps)
        return frozenset(step.picture for step in steps)

    @property
    def pictures(self) -> tuple[str, ...]:
        """The names of all pictures: those that ship with the programme and those of the library."""
        return self.picture_set.names

    @property
    def pictures_in_use(self) -> tuple[str, ...]:
        """The names of the pictures of steps and kit, and of all that the library has drawn itself."""
        kit = {name for garment in self.library.garments.values() for name in garment.pictures.values()}
        return tuple(sorted(self._pictures_of_steps | kit | set(self.picture_set.own_names)))

    @cached_property
    def picture_fingerprints(self) -> dict[str, str]:
        """The fingerprint of every scene that a step uses."""
        return {name: self.picture_set.fingerprint(name) for name in sorted(self._pictures_of_steps)}

    @cached_property
    def kinds(self) -> SheetKinds:
        """The kinds of sheet that it is printed as."""
        return read_sheet_kinds().with_kinds(self.own_kinds)

    @cached_property
    def source(self) -> Wording:
        """The words of the source language."""
        return self.wording(self.library.source_locale)

    def wording(self, tag: str) -> Wording:
        """The words of a locale, opened once as long as few others are asked for meanwhile."""
        known = self._wordings.pop(tag, None)
        if known is None:
            known = open_wording(self.library, self.messages, self.locales, tag, self.fonts)
        self._wordings[tag] = known  # the one asked for last stands last
        self._forget_languages()
        return known

    def _forget_languages(self) -> None:
        """Let go of what was made of the words of languages that nobody has asked for of late."""
        others = [tag for tag in self._wordings if tag != self.library.source_locale]
        for tag in others[:-LANGUAGES_AT_HAND]:
            del self._wordings[tag]
            self._proofs.pop(tag, None)
            for key in [key for key in self._parts if key[1] == tag]:
                del self._parts[key]

    def proof_wording(self, tag: str) -> Wording:
        """The words of a locale with each gap named in its place."""
        if tag not in self._proofs:
            sources = {
                context: text
                for kind in source_texts(self.messages).values()
                for context, text in kind.items()
            }
            self._proofs[tag] = self.wording(tag).for_proof(sources)
        return self._proofs[tag]

    def study(self, protocol: Protocol) -> Study:
        """What the rehearsal of a protocol of this library says; rehearsed once."""
        if protocol.id not in self._studies:
            self._studies[protocol.id] = study_protocol(self.library, protocol)
        return self._studies[protocol.id]

    def report(self, protocol: Protocol, today: date) -> Report:
        """What is told about the rehearsal of a protocol on a day: its waivers hold or have run out."""
        return report_on(self.library, protocol, self.study(protocol), today)

    @cached_property
    def marked_library(self) -> Library:
        """The library with the critical steps of all protocols marked."""
        protocols = {
            name: with_marks(protocol, self.study(protocol).steps.marked)
            for name, protocol in self.library.protocols.items()
        }
        return replace(self.library, protocols=protocols)

    def revision(self, protocol: Protocol, tag: str) -> str:
        """The short revision code of a protocol in a language, one part for each, such as ``3YH6-K2MP``."""
        return f"{self.code(protocol)}-{self.code(protocol, tag)}"

    def code(self, protocol: Protocol, tag: str | None = None) -> str:
        """The printed code of a protocol, or with a tag of its words; nothing else was signed with it."""
        key = (protocol.id, tag)
        if key not in self._codes:
            taken = self.sign_offs.contents_by_code(protocol.code, tag)
            self._codes[key] = free_code(self.part_hash(protocol, tag), taken)
        return self._codes[key]

    def content_hash(self, protocol: Protocol, tag: str) -> str:
        """SHA-256 of both parts that a revision code stands for, in full."""
        return fingerprint((self.part_hash(protocol), self.part_hash(protocol, tag)))

    def part_hash(self, protocol: Protocol, tag: str | None = None) -> str:
        """SHA-256 of what readers of a protocol see or act on, or with a tag of its words in a language."""
        key = (protocol.id, tag)
        if key not in self._prints:
            self._prints[key] = fingerprint(self.content_of(protocol, tag))
        return self._prints[key]

    def content_of(self, protocol: Protocol, tag: str | None = None) -> dict[str, Any]:
        """What the codes of a protocol, or with a tag of its words in a language, stand for."""
        if tag is None:
            return protocol_content(self.library, protocol, self.picture_fingerprints)
        words = self._words_of(protocol, tag)
        return language_content(self.library, tag, words.texts, words.numeral_system)

    def sign_off_words(self, tag: str) -> dict[str, str | None]:
        """The fixed words of a language that only signed sheets carry."""
        return dict(self.wording(tag).only(SIGN_OFF_CONTEXTS).texts)

    def signed_by(self, protocol: Protocol, tag: str) -> SignedBy | None:
        """Who has signed a protocol and its words in a language; None where either is missing."""
        state = self.sign_offs.of(protocol.code)
        steps, words = state.order, state.words.get(tag)
        if steps is None or words is None:
            return None
        verified = self.sign_offs.verified
        return SignedBy(*(SignOff(each.by, each.on, each.n in verified) for each in (steps, words)))

    def context(
        self, protocol: Protocol, tag: str, tone: Tone = Tone.COLOUR, mark: Mark = Mark.DRAFT
    ) -> SheetContext:
        """What the sheets of a protocol in a locale are made from, its critical steps marked.

        Nothing else is in it: a sheet cannot show what the fingerprint of its context does not know.
        """
        marked = with_marks(protocol, self.study(protocol).steps.marked)
        is_proof = mark is Mark.PROOF
        wording = self._words_of(protocol, tag, mark)
        source = self._words_of(
            protocol, self.library.source_locale, mark if mark.is_released else Mark.DRAFT
        )
        code = wording.fixed("proof") if is_proof else self.revision(protocol, tag)
        pictures = self.picture_set.only({*(step.picture for step in protocol.steps), *self.kinds.signs})
        signed = self.signed_by(protocol, tag) if mark.is_released else None
        return SheetContext(
            self._part_of(protocol),
            wording,
            source,
            pictures,
            code,
            tone,
            mark,
            signed=signed,
            protocol=marked,
        )

    def _part_of(self, protocol: Protocol) -> Library:
        """The library as far as sheets of a protocol show it."""
        return replace(
            self.library,
            locales={},
            terms=(),
            wards={protocol.ward: self.library.wards[protocol.ward]},
            protocols={},
            scene_files=(),
            waivers=(),
            people={},
            is_demo=False,
            vocabulary=Vocabulary(),
        )

    def _words_of(self, protocol: Protocol, tag: str, mark: Mark = Mark.DRAFT) -> Wording:
        """The words of a locale as far as sheets of a protocol show them as what has been decided."""
        is_proof = mark is Mark.PROOF
        key = (protocol.id, tag, is_proof, mark.is_released)
        if key not in self._parts:
            whole = self.proof_wording(tag) if is_proof else self.wording(tag)
            fixed = sheet_contexts(protocol)
            if mark.is_released:
                fixed |= SIGN_OFF_CONTEXTS
            self._parts[key] = whole.only(contexts_of_protocol(protocol, self.messages) | fixed)
        return self._parts[key]

    def picture_context(
        self, protocol: str, tag: str, tone: Tone = Tone.COLOUR, mark: Mark = Mark.DRAFT
    ) -> PictureContext:
        """What sheets about the pictures of a protocol are made from, or about all where it is empty."""
        library = self.marked_library
        chosen = library.protocols[protocol] if protocol else None
        used = {step.picture for step in chosen.steps} if chosen else self.pictures
        prints = {name: self.picture_set.fingerprint(name) for name in used}
        code = revision_code(fingerprint(prints))
        wording = self.proof_wording(tag) if mark is Mark.PROOF else self.wording(tag)
        return PictureContext(
            library,
            wording,
            self.source,
            self.picture_set,
            code,
            tone,
            mark,
            pictures=tuple(sorted(used)),
            protocol=chosen,
        )

    @property
    def locales_in_use(self) -> tuple[str, ...]:
        """The locales in which sheets are printed."""
        return tuple(t for t, locale in self.library.locales.items() if locale.state is LocaleState.IN_USE)


def open_project(content: Path, locales: Path, kept: Kept = NOTHING_KEPT) -> Project:
    """Load everything; raises UnreadableInputError with all problems of all files.

    ``kept`` is what earlier runs made; none is used, and nothing kept, unless it is given.
    """
    fonts = open_font_set(content / "fonts")
    problems: list[Problem] = []
    try:
        library = load_library(content, shipped_names(), _rules_to_waive(content))
    except UnreadableInputError as unreadable:
        problems += unreadable.problems
    told = {problem.place.path for problem in problems}
    files = [(file, shown_path(file)) for file in sorted((content / "scenes").glob("[!.]*.yaml"))]
    drawn = ((file, shown) for file, shown in files if shown not in told)
    pictures, faults = with_problems(read_own_pictures(drawn))
    if problems or faults:
        raise UnreadableInputError(sorted([*problems, *faults], key=lambda problem: problem.place))
    sign_offs = judge(approvals_file(content).read(), library)
    return Project(library, content, locales, fonts, PictureSet(pictures, kept=kept), sign_offs)


def _rules_to_waive(content: Path) -> dict[str, Severity] | None:
    """The severity of every rule by its code; only waivers ask for them."""
    if not (content / "waivers.yaml").exists():
        return None
    from signage.check.registry import all_rules  # noqa: PLC0415 - all rules are read, which takes time

    return {code: rule.severity for code, rule in all_rules().items()}
