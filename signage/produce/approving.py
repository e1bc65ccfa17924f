"""What a role would sign: a protocol or its words in a language, with all that it should see before."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date

from signage.compose.sheet_kind import Offer, Per
from signage.control.approved_content import find_approved
from signage.control.binding import (
    Binding,
    ShownOnSheet,
    changes_of_content,
    changes_of_rules,
    common,
    free_code,
    losses,
    shown_on,
)
from signage.control.waiving import beyond_rehearsal, excuse
from signage.drawing.marks import Sheet
from signage.ground.errors import SignageError
from signage.ground.fingerprint import fingerprint, revision_code
from signage.ground.problem import Problem
from signage.model.library import Protocol
from signage.model.mark import Mark
from signage.model.messages import contexts_of_protocol
from signage.model.people import Role
from signage.model.status import WordCount
from signage.model.waiver import Waiver
from signage.produce.kept import NO_FAULTS, KeptResults
from signage.produce.making import Making, findings_of, lesser_findings_of, name_in_binding
from signage.produce.objections import (
    Objection,
    Subject,
    authors_of_part,
    objections_to,
)
from signage.produce.release import Releases
from signage.produce.requests import SheetRequest, Wanted, requests_for
from signage.produce.signed_facts import SignedFacts
from signage.produce.word_counts import count_words
from signage.project import Project

_OF_PROTOCOL = frozenset({Per.PROTOCOL, Per.PHASE, Per.LEARNER})
"""Kinds of sheet that a sign-off of a protocol covers; a ward's own are signed with the ward."""

_CODE_LENGTH = 6


@dataclass(frozen=True)
class Proposal:
    """What a role would sign on a day, and all that it should see before.

    ``bindings`` are what is bound: of the steps together with the source words, or of the words of one
    language. ``sheets`` are drafts of all that would be printed. ``accepted`` are the waivers that hold.
    ``changes`` tell what differs from what was signed last, None where nothing was; ``words`` how far those
    of the language are.
    """

    protocol: Protocol
    locale: str
    by: Role
    on: date
    bindings: tuple[Binding, ...]
    codes: tuple[str, ...]
    authors: tuple[tuple[str, ...], ...]
    sheets: tuple[Sheet, ...]
    findings: tuple[Problem, ...]
    accepted: tuple[str, ...]
    changes: tuple[str, ...] | None
    objections: tuple[Objection, ...]
    words: WordCount

    @property
    def confirmation(self) -> str:
        """The code that says yes to exactly this: it changes with whatever is signed, by whom and when."""
        bound = [each.hash for each in self.bindings]
        return revision_code(
            fingerprint([bound, self.by.id, self.on.isoformat(), list(self.accepted)]), _CODE_LENGTH
        )

    @property
    def what(self) -> str:
        """What is signed, as messages call it."""
        of_steps = self.bindings[0].locale is None
        return self.protocol.code if of_steps else f"the words of {self.protocol.code} in {self.locale}"


@dataclass(frozen=True)
class _LookedAt:
    """Composed sheets, what each kind shows, what was found on them, and which could not be made."""

    sheets: tuple[Sheet, ...]
    shown: Mapping[str, ShownOnSheet]
    problems: tuple[Problem, ...]
    objections: tuple[Objection, ...]


def propose(
    project: Project, protocol: Protocol, locale: str | None, by: Role, on: date, results: KeptResults
) -> Proposal:
    """What ``by`` would sign: the steps with the source words, or the words in ``locale``."""
    tag = locale or project.library.source_locale
    of_steps = locale is None
    releases = Releases(project, on, results)
    release = releases.of(protocol.id, tag)
    looked = _look(project, protocol, tag, results) if release.is_worded else _LookedAt((), {}, (), ())
    waivers = project.library.waivers
    excused = excuse(looked.problems, beyond_rehearsal(waivers), on)
    release = release.with_sheet(excused.standing)
    rules = dict(SignedFacts(project).rules)
    bindings = tuple(
        Binding(
            protocol.code,
            each,
            project.content_of(protocol, each) if release.is_worded or each is None else {},
            rules,
            looked.shown,
            {} if each is None else project.sign_off_words(each),
        )
        for each in ((None, tag) if of_steps else (tag,))
    )
    subject = Subject(project, protocol, tag, of_steps)
    authors = tuple(authors_of_part(project, protocol, each.locale) for each in bindings)
    return Proposal(
        protocol,
        tag,
        by,
        on,
        bindings,
        tuple(_free_code(project, protocol, each) for each in bindings),
        authors,
        looked.sheets,
        tuple(release.facts.problems),
        tuple(f"{each.code} {each.reason}" for each in waivers if _holds(each, protocol, on)),
        _changes(project, protocol, bindings),
        tuple(objections_to(subject, by, release, looked.objections, authors)),
        count_words(
            project, tag, contexts_of_protocol(protocol, project.messages), releases.words_problems(tag)
        ),
    )


def _holds(waiver: Waiver, protocol: Protocol, on: date) -> bool:
    return waiver.protocol in {None, protocol.id} and on <= waiver.expires


def _free_code(project: Project, protocol: Protocol, binding: Binding) -> str:
    return free_code(binding.content_hash, project.sign_offs.contents_by_code(protocol.code, binding.locale))


def _look(project: Project, protocol: Protocol, tag: str, results: KeptResults) -> _LookedAt:
    """Every sheet that the sign-off covers, on every paper of the library, composed as a draft."""
    sheets: list[Sheet] = []
    shown: list[tuple[str, ShownOnSheet]] = []
    problems: list[Problem] = []
    objections: list[Objection] = []
    for request in requests_to_sign(project, protocol, tag):
        try:
            sheet = Making(results, request).sheet(Mark.DRAFT, NO_FAULTS)
        except SignageError as refusal:
            objections.append(Objection(str(refusal), "Mend the text, or choose another paper."))
            continue
        grave, obstacles = findings_of(project, request, sheet, Mark.DRAFT)
        problems += (*grave, *lesser_findings_of(project, request, sheet, Mark.DRAFT))
        objections += (Objection(each, "Mend the text, or choose another paper.") for each in obstacles)
        sheets.append(sheet)
        shown.append((name_in_binding(request.kind, request.part), shown_on(sheet)))
    return _LookedAt(tuple(sheets), common(shown), tuple(problems), tuple(objections))


def requests_to_sign(project: Project, protocol: Protocol, tag: str) -> Iterator[SheetRequest]:
    """The sheets of a protocol in a language that its sign-off covers, those made on request too."""
    usual = Wanted((protocol.id,), (tag,))
    kinds = [
        kind.name for kind in project.kinds if kind.per in _OF_PROTOCOL and kind.offer is Offer.ON_REQUEST
    ]
    wishes = (usual, replace(usual, kinds=tuple(kinds))) if kinds else (usual,)
    for wanted in wishes:
        for request in requests_for(project, wanted):
            if project.kinds.of(request.kind).per in _OF_PROTOCOL:
                yield request


def _changes(project: Project, protocol: Protocol, bindings: Sequence[Binding]) -> tuple[str, ...] | None:
    """What differs from what was signed last, whether or not that still holds."""
    told: list[str] = []
    is_first = True
    for binding in bindings:
        last = project.sign_offs.last(protocol.code, binding.locale)
        before = find_approved(project.content, last.binds) if last and last.binds else None
        if before is None:
            continue
        is_first = False
        told += changes_of_content(before.content, binding.content)
        told += changes_of_rules(before.rules, binding.rules)
        for name, shown in before.sheets.items():
            lost = losses(shown, binding.sheets[name]) if name in binding.sheets else ["it is no longer made"]
            told += (f"sheet '{name}': {each}" for each in lost)
    return None if is_first else tuple(dict.fromkeys(told))
