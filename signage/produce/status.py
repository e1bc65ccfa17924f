"""Where a library stands: gathered from the releases, the sign-offs and the register; nothing is decided."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

from signage.control.agenda import tasks_of
from signage.control.recall import cause_of
from signage.control.waiving import beyond_rehearsal, excuse
from signage.ground.errors import UnreadableInputError
from signage.ground.problem import Problem, Severity
from signage.load.file_text import shown_path
from signage.model.copies import CopyState
from signage.model.library import LocaleState, Protocol
from signage.model.messages import contexts_of_protocol
from signage.model.status import (
    FindingCount,
    LanguageStatus,
    LibraryStatus,
    ProtocolStatus,
    SheetStatus,
    WordCount,
)
from signage.produce.current_sheets import ReleasedSheets
from signage.produce.kept import KeptResults
from signage.produce.release import Releases
from signage.produce.requests import SheetRequest, Wanted, requests_for
from signage.produce.word_counts import count_words
from signage.project import Project
from signage.words.catalogue import CatalogueKind, catalogue_path
from signage.words.numerals import autonym


def status_of_library(
    project: Project, today: date, results: KeptResults, states: Sequence[CopyState] | None
) -> LibraryStatus:
    """The status on a day; ``states`` are the copies of the register, None where there is none."""
    gathering = _Gathering(project, today, results, tuple(states or ()))
    library = project.library
    fault = project.sign_offs.fault
    status = LibraryStatus(
        name=library.name,
        source=library.source_locale,
        day=today,
        is_demo=library.is_demo,
        protocols=tuple(
            gathering.protocol(each) for each in sorted(library.protocols.values(), key=_by_code)
        ),
        languages=tuple(gathering.language(tag) for tag in library.locales),
        strays=gathering.strays,
        fault=str(fault) if fault is not None else "",
        has_register=states is not None,
    )
    return replace(status, tasks=tasks_of(status, library.people))


@dataclass(frozen=True)
class _Gathering:
    """What a status is gathered from."""

    project: Project
    today: date
    results: KeptResults
    states: tuple[CopyState, ...]

    @cached_property
    def releases(self) -> Releases:
        return Releases(self.project, self.today, self.results)

    @cached_property
    def _current(self) -> ReleasedSheets:
        return ReleasedSheets(self.project, self.releases)

    @cached_property
    def _requests(self) -> Mapping[str, Sequence[SheetRequest]]:
        """The sheets that would be made, by protocol."""
        found: dict[str, list[SheetRequest]] = {}
        for each in requests_for(self.project, Wanted()):
            found.setdefault(each.protocol, []).append(each)
        return found

    def protocol(self, protocol: Protocol) -> ProtocolStatus:
        """A protocol in every language of the library."""
        looked = self._looked_at(protocol)
        in_use = [tag for tag in self.project.library.locales if self._is_in_use(tag, protocol)]
        found = {
            problem for tag in in_use for problem in self.releases.of(protocol.id, tag).facts.problems
        } | {problem for each in looked if each is not None for problem in each}
        counted = Counter(problem.severity for problem in found)
        return ProtocolStatus(
            id=protocol.id,
            code=protocol.code,
            title=protocol.title,
            owner=protocol.owner,
            review_by=protocol.review_by,
            path=protocol.place.path,
            findings=FindingCount(counted[Severity.S1], counted[Severity.S2], counted[Severity.S3]),
            sheets=tuple(self._sheet(protocol, tag) for tag in self.project.library.locales),
            unseen=sum(each is None for each in looked),
        )

    def _is_in_use(self, tag: str, protocol: Protocol) -> bool:
        return self.project.library.locales[tag].is_in_use_for(protocol.id)

    def _looked_at(self, protocol: Protocol) -> list[tuple[Problem, ...] | None]:
        """What the last check found on each sheet and no waiver excuses; None for a sheet not seen so."""
        waivers = beyond_rehearsal(self.project.library.waivers)
        found: list[tuple[Problem, ...] | None] = []
        for request in self._requests.get(protocol.id, ()):
            if self.releases.of(protocol.id, request.locale).is_worded:
                problems = self.results.sheet_problems(request)
                found.append(None if problems is None else excuse(problems, waivers, self.today).standing)
        return found

    def _sheet(self, protocol: Protocol, tag: str) -> SheetStatus:
        project, release = self.project, self.releases.of(protocol.id, tag)
        facts, decision = release.facts, release.decision
        state = project.sign_offs.of(protocol.code)
        last = state.words.get(tag) or state.order
        copies = self._copies.get((protocol.id, tag), ())
        return SheetStatus(
            locale=tag,
            words=self._words(tag, contexts_of_protocol(protocol, project.messages)),
            mark=decision.granted(wants_proof=True),
            can_be_read=not self._fault(tag),
            is_in_use=facts.is_in_use,
            is_withdrawn=decision.is_withdrawn,
            is_order_signed=facts.is_order_signed,
            are_words_signed=facts.are_words_signed,
            has_changed=bool(facts.changes),
            signed_by=last.by if last else None,
            signed_on=last.on if last else None,
            revision=project.revision(protocol, tag) if release.is_worded else None,
            mounted=len(copies),
            obsolete=sum(self._is_obsolete(each) for each in copies),
            reasons=tuple(map(str, decision.reasons)),
        )

    def _is_obsolete(self, state: CopyState) -> bool:
        """Whether a copy shows what is no longer so; unknown, and so not, where no sign-off can be read."""
        return self.project.sign_offs.fault is None and cause_of(state, self._current) is not None

    def _fault(self, tag: str) -> str:
        """Why the words of a language cannot be read."""
        try:
            self.project.wording(tag)
        except UnreadableInputError as unreadable:
            first = unreadable.problems[0]
            return f"{first.place}: {first.message}"
        return ""

    @cached_property
    def _copies(self) -> Mapping[tuple[str, str], Sequence[CopyState]]:
        """The copies that hang or are with learners, by protocol and language."""
        found: dict[tuple[str, str], list[CopyState]] = {}
        for each in self.states:
            if each.is_out:
                found.setdefault((each.copy.subject, each.copy.locale), []).append(each)
        return found

    @property
    def strays(self) -> Mapping[str, int]:
        """Copies that are out of protocols, or in languages, that the library does not have."""
        library = self.project.library
        counts: Counter[str] = Counter()
        for (subject, tag), copies in self._copies.items():
            if subject not in library.protocols or tag not in library.locales:
                counts[subject] += len(copies)
        return counts

    def language(self, tag: str) -> LanguageStatus:
        """A language with all texts that the protocols show which it is in use for."""
        project = self.project
        locale = project.library.locales[tag]
        known: frozenset[str] = frozenset()
        for each in project.library.protocols.values():
            if self._is_in_use(tag, each) or locale.state is LocaleState.IN_WORK:
                known |= contexts_of_protocol(each, project.messages)
        return LanguageStatus(
            tag=tag,
            name=autonym(tag),
            owner=locale.owner,
            is_in_use=locale.state is LocaleState.IN_USE,
            words=self._words(tag, known),
            path=shown_path(catalogue_path(project.locales, tag, CatalogueKind.CONTENT)),
            fault=self._fault(tag),
        )

    def _words(self, tag: str, known: frozenset[str]) -> WordCount:
        return count_words(self.project, tag, known, self.releases.words_problems(tag))


def _by_code(protocol: Protocol) -> tuple[int, str]:
    """P2 comes before P10."""
    return len(protocol.code), protocol.code
