"""What stands against a signature: findings, words, the review, and who wrote what."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from signage.control.decision import standing_against
from signage.ground.counting import counted
from signage.ground.place import NOWHERE, Place
from signage.model.library import Protocol
from signage.model.people import Role, authors_of, translators_of
from signage.produce.release import Release
from signage.project import Project
from signage.words.checking import Check, checks_of


@dataclass(frozen=True)
class Objection:
    """Why something is not signed, and what to do."""

    reason: str
    cure: str
    place: Place = NOWHERE

    def __str__(self) -> str:
        """The sentence, behind its place where it has one."""
        return f"{self.place}: {self.reason}" if self.place.path else self.reason


@dataclass(frozen=True)
class Subject:
    """What is signed: the steps of a protocol with their source words, or the words of ``tag``."""

    project: Project
    protocol: Protocol
    tag: str
    of_steps: bool

    @property
    def is_translated(self) -> bool:
        """Whether somebody has translated what is signed."""
        return not self.of_steps and self.tag != self.project.library.source_locale

    @property
    def checks(self) -> tuple[Check, ...]:
        """Who has translated and checked each of its texts."""
        project = self.project
        return checks_of(project.library, project.messages, project.locales, self.tag, self.protocol)


def authors_of_part(project: Project, protocol: Protocol, locale: str | None) -> tuple[str, ...]:
    """The roles that wrote a protocol, its source words too, or that translated it."""
    people, library = project.library.people, project.library
    if locale is None or locale == library.source_locale:
        return authors_of(people, protocol.id)
    checks = Subject(project, protocol, locale, of_steps=False).checks
    named = {each.translator for each in checks if each.translator}
    return tuple(dict.fromkeys((*translators_of(people, locale), *sorted(named))))


def objections_to(
    subject: Subject,
    by: Role,
    release: Release,
    of_sheets: Sequence[Objection],
    authors: Sequence[Sequence[str]],
) -> Iterator[Objection]:
    """Each thing for which ``by`` may not sign, with its cure; none where it may."""
    for reason, cure in standing_against(release.facts):
        yield Objection(reason.text, cure, reason.place)
    yield from of_sheets
    yield from _objections_to_role(
        subject, by, tuple(dict.fromkeys(name for each in authors for name in each))
    )
    if subject.is_translated:
        yield from _objections_to_checks(subject)


def _objections_to_role(subject: Subject, by: Role, wrote: Sequence[str]) -> Iterator[Objection]:
    did = f"translates into {subject.tag}" if subject.is_translated else f"writes {subject.protocol.code}"
    if not wrote:
        key = (
            f"translates: [{subject.tag}]" if subject.is_translated else f"writes: [{subject.protocol.code}]"
        )
        yield Objection(
            f"content/people.yaml names no role that {did}, so nobody can see that another one signs it.",
            f"Write '{key}' at the role that does.",
        )
    if by.id in wrote:
        people = subject.project.library.people
        others = [role.id for role in people.values() if role.signs and role.id not in wrote]
        yield Objection(
            f"{by.id} {did}, and nobody signs their own work.",
            f"These may sign: {', '.join(others)}." if others else "Let another role sign ('signs: yes').",
        )


def _objections_to_checks(subject: Subject) -> Iterator[Objection]:
    """Texts that were checked by their own translator, or by a role that does not check this language."""
    people, tag = subject.project.library.people, subject.tag
    translators = set(translators_of(people, tag))
    checked = [(each, each.checker) for each in subject.checks if each.checker]
    command = f"signage words check-off {tag} --protocol {subject.protocol.code} --as ROLE"
    own = [each for each, by in checked if by in ({each.translator} if each.translator else translators)]
    strange = [each for each, by in checked if by not in people or tag not in people[by].checks]
    if own:
        yield Objection(
            f"{own[0].checker} has checked its own translation ({counted(len(own), 'text')}).",
            f"Another role checks them: '{command}'.",
            own[0].place,
        )
    if strange:
        yield Objection(
            f"{strange[0].checker} has checked {counted(len(strange), 'text')}, and no role of that name "
            f"checks {tag}.",
            f"Write 'checks: [{tag}]' at the role, or let another one check: '{command}'.",
            strange[0].place,
        )
