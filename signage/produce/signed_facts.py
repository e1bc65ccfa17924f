"""What the sign-offs say of a protocol in a language: signed, changed since, withdrawn, or not counted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from signage.check.content_rule import SignOffFault, SignOffFaults
from signage.check.registry import all_rules
from signage.control.approvals_file import approvals_file
from signage.control.approved_content import find_approved, path_of
from signage.control.binding import Binding, changes_of_content, changes_of_rules
from signage.control.decision import Reason, ReleaseFacts
from signage.control.records import Record, RecordKind
from signage.ground.place import Place
from signage.ground.problem import Severity
from signage.ground.quotation import quoted
from signage.load.content_files import SIGN_OFFS
from signage.load.file_text import shown_path
from signage.model.library import Protocol
from signage.project import Project


@dataclass(frozen=True)
class Standing:
    """What holds of a protocol in a language; ``signed`` is what was signed of its words, where both are."""

    order: Record | None = None
    words: Record | None = None
    withdrawal: Reason | None = None
    uncounted: tuple[Reason, ...] = ()
    changes: tuple[Reason, ...] = ()
    signed: Binding | None = None

    def told_in(self, facts: ReleaseFacts) -> ReleaseFacts:
        """The facts with those of the sign-offs."""
        return replace(
            facts,
            is_order_signed=self.order is not None,
            are_words_signed=self.words is not None,
            withdrawal=self.withdrawal,
            uncounted=self.uncounted,
            changes=self.changes,
        )


class SignedFacts:
    """The sign-offs of a project, held against its content as it is."""

    def __init__(self, project: Project) -> None:
        self._project = project
        self._path = shown_path(project.content / SIGN_OFFS)

    def standing(self, protocol: Protocol, tag: str) -> Standing:
        """What holds of a protocol in a language."""
        sign_offs = self._project.sign_offs
        if sign_offs.fault is not None:
            return Standing(uncounted=(_of_fault(sign_offs.fault.message, sign_offs.fault.place),))
        state = sign_offs.of(protocol.code)
        withdrawal = state.withdrawal(tag)
        order, words = state.order, state.words.get(tag)
        changes: list[Reason] = []
        signed: Binding | None = None
        for record, locale in ((order, None), (words, tag)):
            if record is not None:
                binding = self._approved(record)
                changes += map(Reason, self._changes(protocol, locale, record, binding))
                signed = binding if order and locale else None
        return Standing(
            order,
            words,
            None if withdrawal is None else self._withdrawn(protocol, withdrawal),
            tuple(self._uncounted(protocol, tag)),
            tuple(changes),
            signed,
        )

    def _changes(
        self, protocol: Protocol, locale: str | None, record: Record, binding: Binding | None
    ) -> Iterator[str]:
        """What differs from what a record binds, in sentences."""
        what = (
            f"Changed since {record.by} signed {'its steps' if locale is None else f'its words in {locale}'}"
        )
        if binding is None:
            path = shown_path(path_of(self._project.content, record.binds or ""))
            yield f"What {record.by} signed is missing or damaged: {path}. Restore it, or sign again."
            return
        told: list[str] = []
        if record.content != self._project.part_hash(protocol, locale):
            now = self._project.content_of(protocol, locale)
            told += [*changes_of_content(binding.content, now)] or ["its content"]
        if locale is not None and dict(binding.more) != self._project.sign_off_words(locale):
            told.append("the fixed words of signed sheets")
        told += changes_of_rules(binding.rules, self.rules)
        if told:
            yield f"{what} on {record.on.isoformat()}: {'; '.join(told)}."

    @cached_property
    def rules(self) -> Mapping[str, str]:
        """The severity of every rule that stands against approval."""
        return {
            code: rule.severity.value
            for code, rule in sorted(all_rules().items())
            if rule.severity is not Severity.S3
        }

    def _approved(self, record: Record) -> Binding | None:
        return find_approved(self._project.content, record.binds) if record.binds else None

    def _withdrawn(self, protocol: Protocol, record: Record) -> Reason:
        what = f"{protocol.code} in {record.locale}" if record.locale else protocol.code
        return Reason(
            f"{what} was withdrawn by {record.by} on {record.on.isoformat()}: {quoted(record.reason or '')}. "
            f"It is printed again when it is signed anew ('signage approve {protocol.code}').",
            Place(self._path, record.n, 1),
        )

    def _uncounted(self, protocol: Protocol, tag: str) -> Iterator[Reason]:
        """Why the last sign-off of its steps, or of its words in the language, does not count."""
        sign_offs = self._project.sign_offs
        for locale in (None, tag):
            record = sign_offs.last(protocol.code, locale)
            if record is not None and record.n in sign_offs.discounted:
                kind = "steps" if record.kind is RecordKind.PROTOCOL else f"words in {tag}"
                yield Reason(
                    f"The sign-off of its {kind} by {record.by} does not count: "
                    f"{sign_offs.discounted[record.n]}.",
                    Place(self._path, record.n, 1),
                )


def _of_fault(message: str, place: Place) -> Reason:
    return Reason(f"No sign-off counts: {message} ('signage approvals list' tells what to do.)", place)


def sign_off_faults(project: Project) -> SignOffFaults:
    """What is wrong with the sign-offs of a library as a whole."""
    sign_offs = project.sign_offs
    fault = sign_offs.fault
    if fault is not None:
        return SignOffFaults(SignOffFault(fault.message, fault.place, fault.hint))
    path = shown_path(project.content / SIGN_OFFS)
    last = {(each.protocol, each.locale): each for each in sign_offs.ledger.records if each.code}
    uncounted = (each for each in last.values() if each.n in sign_offs.discounted)
    return SignOffFaults(
        None,
        tuple(
            SignOffFault(
                f"The sign-off of {each.protocol}{f' in {each.locale}' if each.locale else ''} by {each.by} "
                f"does not count: {sign_offs.discounted[each.n]}",
                Place(path, each.n, 1),
            )
            for each in uncounted
        ),
    )


def remember_head(project: Project) -> None:
    """Keep the end of a sound file of sign-offs as the last one seen."""
    approvals_file(project.content).remember(project.sign_offs.ledger)
