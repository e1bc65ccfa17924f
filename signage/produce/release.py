"""What is known of a protocol in a language, gathered for the one decision on what may be printed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property

from signage.check.content_rule import ContentSubject
from signage.check.registry import all_content_rules
from signage.compose.proof import Faulty
from signage.control.binding import Binding
from signage.control.decision import Decision, Reason, ReleaseFacts, decide
from signage.control.waiving import beyond_rehearsal, excuse
from signage.ground.errors import UnreadableInputError
from signage.ground.place import Place
from signage.ground.problem import Problem, Severity
from signage.load.file_text import shown_path
from signage.load.unread_files import unread_files
from signage.model.library import LocaleState, Protocol
from signage.model.mark import Mark
from signage.model.messages import contexts_of_protocol
from signage.produce.kept import KeptResults
from signage.produce.signed_facts import SignedFacts, sign_off_faults
from signage.project import Project
from signage.words.checking import is_of_protocol
from signage.words.folders import unlisted_folders
from signage.words.standin import STAND_INS

_GAPS = frozenset({"WD-1", "WD-2", "WD-3", "WD-17"})
"""Rules about texts that are not there; a gap is a reason of its own."""


@dataclass(frozen=True)
class Release:
    """The facts of a protocol in a language, what follows from them, and what a proof outlines."""

    facts: ReleaseFacts
    signed: Binding | None = None
    """What was signed of its words, and what its sheets showed then."""

    @cached_property
    def decision(self) -> Decision:
        """What may be printed, and why nothing more."""
        return decide(self.facts)

    @property
    def is_worded(self) -> bool:
        """Whether every text is there, so that sheets can be composed without a gap."""
        return self.facts.is_in_use and not self.facts.gaps and not self.facts.obstacles

    @property
    def has_pages(self) -> bool:
        """Whether pages may show it; what was withdrawn keeps its pages, which say so on every step."""
        return decide(replace(self.facts, withdrawal=None)).mark is not Mark.REFUSED

    @property
    def has_grave_findings(self) -> bool:
        """Whether something was found that can hurt."""
        return any(problem.severity is Severity.S1 for problem in self.facts.problems)

    @property
    def has_findings(self) -> bool:
        """Whether something was found that stands against approval, and no waiver excuses it."""
        return any(problem.severity is not Severity.S3 for problem in self.facts.problems)

    @property
    def has_faulty_words(self) -> bool:
        """Whether a text may say something else than its source, and nobody has accepted that."""
        return self.has_findings and any(
            problem.severity is not Severity.S3 and problem.code.startswith("WD-")
            for problem in self.facts.problems
        )

    def with_sheet(
        self, problems: Sequence[Problem], obstacles: Sequence[str] = (), changes: Sequence[str] = ()
    ) -> Release:
        """The same with what was found on a composed sheet, and what it shows no longer."""
        return replace(
            self,
            facts=replace(
                self.facts,
                problems=(*self.facts.problems, *problems),
                obstacles=(*self.facts.obstacles, *map(Reason, obstacles)),
                changes=(*self.facts.changes, *map(Reason, changes)),
            ),
        )

    @property
    def faulty(self) -> Faulty:
        """What a proof outlines: gaps, faulty texts and steps that can hurt."""
        grave = [problem for problem in self.facts.problems if problem.severity is Severity.S1]
        texts = {*self.facts.gaps, *(problem.text for problem in grave if problem.text is not None)}
        steps = {problem.step for problem in grave if problem.step and problem.text is None}
        return Faulty(frozenset(texts), frozenset(steps))


class Releases:
    """The releases of a project on a day; words and orders are looked at once."""

    def __init__(self, project: Project, today: date, results: KeptResults | None = None) -> None:
        self._project = project
        self._today = today
        self._results = results or KeptResults(project)
        self._orders: dict[str, tuple[Problem, ...]] = {}
        self._excused: dict[str, tuple[Problem, ...]] = {}
        self._known: dict[tuple[str, str], Release] = {}
        self._sign_offs = SignedFacts(project)

    @property
    def today(self) -> date:
        """The day on which is decided."""
        return self._today

    def of(self, protocol: str, tag: str) -> Release:
        """What may be printed of a protocol, or with an empty name of pictures alone, in a language."""
        key = (protocol, tag)
        if key not in self._known:
            self._known[key] = (
                self._release(self._project.library.protocols[protocol], tag)
                if protocol
                else Release(self._facts_of_pictures(tag))
            )
        return self._known[key]

    def _release(self, protocol: Protocol, tag: str) -> Release:
        facts = self._facts(protocol, tag)
        standing = self._sign_offs.standing(protocol, tag)
        return Release(standing.told_in(facts), standing.signed)

    def _facts(self, protocol: Protocol, tag: str) -> ReleaseFacts:
        project, library = self._project, self._project.library
        locale = library.locales.get(tag)
        known = contexts_of_protocol(protocol, project.messages)
        try:
            wording = project.wording(tag)
        except UnreadableInputError as unreadable:
            obstacles = tuple(
                Reason(f"{each.code} {each.message}", each.place) for each in unreadable.problems
            )
            return self._bare(tag, protocol.review_by, obstacles)
        gaps = tuple(context for context in wording.gaps if is_of_protocol(context, known))
        return ReleaseFacts(
            locale=tag,
            today=self._today,
            review_by=protocol.review_by,
            is_in_use=locale is None or locale.is_in_use_for(protocol.id),
            obstacles=self._without_font(tag),
            gaps=gaps,
            causes=tuple(self._causes(tag, gaps)),
            problems=tuple(self._problems(protocol, tag, known)),
            has_checked_words=not any(is_of_protocol(context, known) for context in wording.unchecked),
            is_demo=library.is_demo,
        )

    def _problems(self, protocol: Protocol, tag: str, known: frozenset[str]) -> Iterable[Problem]:
        """Of the order, of the source texts and of the language, as far as they concern the protocol."""
        yield from self._order_problems(protocol)
        ward = self._project.library.wards[protocol.ward].place.path
        for problem in self._standing_content:
            if problem.protocol == protocol.id or (problem.protocol is None and problem.place.path == ward):
                yield problem
        for each in {self._project.library.source_locale: None, tag: None}:
            for problem in self._standing(each):
                if problem.code not in _GAPS and _concerns(problem, protocol, known):
                    yield problem

    def _order_problems(self, protocol: Protocol) -> Sequence[Problem]:
        """The findings of the rehearsal; the same in every language."""
        if protocol.id not in self._orders:
            self._orders[protocol.id] = tuple(self._project.report(protocol, self._today).problems)
        return self._orders[protocol.id]

    @cached_property
    def _standing_content(self) -> tuple[Problem, ...]:
        """The findings on the content that no waiver of this day excuses."""
        waivers = beyond_rehearsal(self._project.library.waivers)
        return excuse(self.content_problems, waivers, self._today).standing

    def _causes(self, tag: str, gaps: Sequence[str]) -> Iterator[Problem]:
        """The gravest finding at each gap."""
        found: dict[str, Problem] = {}
        for problem in self._standing(tag) if gaps else ():
            if problem.text is not None and problem.severity is Severity.S1:
                found.setdefault(problem.text, problem)
        return (found[context] for context in gaps if context in found)

    @cached_property
    def content_problems(self) -> tuple[Problem, ...]:
        """The findings of all rules over the content as a whole."""
        project = self._project
        folders = unlisted_folders(project.library, project.locales)
        subject = ContentSubject(
            project.library,
            self._today,
            unread_files(project.content),
            tuple((folder.name, Place(shown_path(folder))) for folder in folders),
            sign_off_faults(project),
        )
        return tuple(problem for rule in all_content_rules() for problem in rule.find(subject))

    def words_problems(self, tag: str) -> tuple[Problem, ...]:
        """Every fault of the words of a language; a stand-in language has none."""
        return () if tag in STAND_INS else self._results.words_problems(tag)

    def _standing(self, tag: str) -> tuple[Problem, ...]:
        """The faults of a language that no waiver of this day excuses."""
        if tag not in self._excused:
            waivers = beyond_rehearsal(self._project.library.waivers)
            self._excused[tag] = excuse(self.words_problems(tag), waivers, self._today).standing
        return self._excused[tag]

    def _facts_of_pictures(self, tag: str) -> ReleaseFacts:
        locale = self._project.library.locales.get(tag)
        is_in_use = locale is None or locale.state is LocaleState.IN_USE
        return replace(self._bare(tag, date.max, self._without_font(tag)), is_in_use=is_in_use)

    def _without_font(self, tag: str) -> tuple[Reason, ...]:
        """What keeps all sheets of a language that no font shows from being made."""
        return tuple(
            Reason(f"{each.code} {each.message}. {each.hint}", each.place)
            for each in self.words_problems(tag)
            if each.code == "WD-39"
        )

    def _bare(self, tag: str, review_by: date, obstacles: tuple[Reason, ...] = ()) -> ReleaseFacts:
        return ReleaseFacts(locale=tag, today=self._today, review_by=review_by, obstacles=obstacles)


def _concerns(problem: Problem, protocol: Protocol, known: frozenset[str]) -> bool:
    """Whether a fault of words is one of this protocol: its own, of a text it shows, or of a whole file."""
    if problem.text is not None:
        return is_of_protocol(problem.text, known)
    return problem.protocol in {None, protocol.id}
