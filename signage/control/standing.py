"""Which sign-offs hold: the records of a sound file, walked through as a machine of few states."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TypeVar

from signage.control.approvals import NO_RECORDS, Ledger, LedgerFault
from signage.control.records import Record, RecordKind
from signage.control.signatures import judge_signatures
from signage.model.library import Library

_Key = TypeVar("_Key", str, str | None)

SIGNATURES_REQUIRED = "signatures-required"
"""A value of policy.yaml: no record counts without a valid signature."""


@dataclass(frozen=True)
class SubjectState:
    """What holds of one subject.

    ``order`` is the sign-off of its steps, ``words`` those of its languages, ``withdrawn`` the withdrawals
    that nothing has lifted, by language, None for all of them.
    """

    order: Record | None = None
    words: Mapping[str, Record] = field(default_factory=dict)
    withdrawn: Mapping[str | None, Record] = field(default_factory=dict)

    def withdrawal(self, tag: str) -> Record | None:
        """The withdrawal that keeps a language from being printed; that of the whole subject first."""
        return self.withdrawn.get(None) or self.withdrawn.get(tag)

    def after(self, record: Record) -> SubjectState:
        """The state that a record leads to.

        A withdrawal ends every sign-off before it, of all languages or of its own; what is signed after it
        lifts it.
        """
        if record.kind is RecordKind.PROTOCOL:
            return SubjectState(record, self.words, _without(self.withdrawn, None))
        if record.kind is RecordKind.LANGUAGE and record.locale is not None:
            words = {**self.words, record.locale: record}
            return SubjectState(self.order, words, _without(self.withdrawn, record.locale))
        if record.kind is RecordKind.WITHDRAWAL:
            withdrawn = {**self.withdrawn, record.locale: record}
            if record.locale is None:
                return SubjectState(None, {}, withdrawn)
            return SubjectState(self.order, _without(self.words, record.locale), withdrawn)
        return self


def _without(values: Mapping[_Key, Record], key: _Key) -> Mapping[_Key, Record]:
    return {each: record for each, record in values.items() if each != key}


@dataclass(frozen=True)
class SignOffs:
    """The records of a library, and which of them count.

    ``discounted`` says by number why a record does not; ``verified`` are those with a valid signature.
    """

    ledger: Ledger = NO_RECORDS
    discounted: Mapping[int, str] = field(default_factory=dict)
    verified: frozenset[int] = frozenset()

    @property
    def fault(self) -> LedgerFault | None:
        """Why nothing of the file counts."""
        return self.ledger.fault

    @cached_property
    def _states(self) -> Mapping[str, SubjectState]:
        return states_after(each for each in self.ledger.records if each.n not in self.discounted)

    def of(self, subject: str) -> SubjectState:
        """What holds of a subject, such as ``P1``."""
        return self._states.get(subject, SubjectState())

    def last(self, subject: str, locale: str | None) -> Record | None:
        """The last sign-off of a subject or of its words in a language, whether or not it still holds."""
        kind = RecordKind.PROTOCOL if locale is None else RecordKind.LANGUAGE
        return next(
            (
                each
                for each in reversed(self.ledger.records)
                if (each.kind, each.protocol, each.locale) == (kind, subject, locale)
            ),
            None,
        )

    def contents_by_code(self, subject: str, locale: str | None) -> Mapping[str, str]:
        """The content that each printed code of a subject, or of its words in a language, stands for."""
        return {
            each.code: each.content
            for each in self.ledger.records
            if (each.protocol, each.locale) == (subject, locale) and each.code and each.content
        }


NO_SIGN_OFFS = SignOffs()


def states_after(records: Iterable[Record]) -> dict[str, SubjectState]:
    """The state of every subject after all records that count."""
    states: dict[str, SubjectState] = {}
    for record in records:
        if record.kind is not RecordKind.KEY:
            states[record.protocol] = states.get(record.protocol, SubjectState()).after(record)
    return states


def judge(ledger: Ledger, library: Library) -> SignOffs:
    """Which records of a file count in this library.

    Not those made in a demonstration unless the library is one, nor those that their own author signed, nor
    those whose signature is wanted and missing, or not valid.
    """
    policy = library.policy.get(SIGNATURES_REQUIRED)
    are_required = policy is not None and policy.value is True
    signed = judge_signatures(ledger.records, library.people, are_required=are_required)
    discounted = dict(signed.faults)
    for record in ledger.records:
        if record.demo and not library.is_demo:
            discounted[record.n] = "it was made in a demonstration"
        elif record.by in record.authors and record.kind is not RecordKind.KEY:
            discounted[record.n] = f"{record.by} wrote what it signs"
    return SignOffs(ledger, discounted, signed.verified)
