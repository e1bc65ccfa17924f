"""The records of what a role signs or withdraws, and the file of what was signed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from signage.control.approvals import Ledger, chained, with_record
from signage.control.approvals_file import approvals_file
from signage.control.approved_content import keep_approved
from signage.control.binding import Binding, free_code
from signage.control.records import BEFORE_ALL, Record, RecordKind
from signage.control.signatures import judge_signatures
from signage.control.standing import judge
from signage.ground.errors import RefusedError
from signage.model.library import Protocol
from signage.model.people import Role
from signage.produce.approving import Proposal
from signage.project import Project

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey


def sign(
    project: Project, proposal: Proposal, private: Ed25519PrivateKey | None = None
) -> tuple[Record, ...]:
    """Write what is signed and the records of it; what is returned is on the disk.

    Raises ValueError where something stands against it.
    """
    if proposal.objections:
        raise ValueError(str(proposal.objections[0]))
    file = approvals_file(project.content)
    made = []
    for binding, authors in zip(proposal.bindings, proposal.authors, strict=True):
        keep_approved(project.content, binding)

        def make(ledger: Ledger, binding: Binding = binding, authors: Sequence[str] = authors) -> Record:
            record = _record(ledger, proposal, binding, authors, is_demo=project.library.is_demo)
            return _counting(project, ledger, signed_in_place(ledger, record, private))

        made.append(file.append(make))
    return tuple(made)


def _record(
    ledger: Ledger, proposal: Proposal, binding: Binding, authors: Sequence[str], *, is_demo: bool
) -> Record:
    return Record(
        n=0,
        previous=BEFORE_ALL,
        kind=RecordKind.PROTOCOL if binding.locale is None else RecordKind.LANGUAGE,
        protocol=binding.subject,
        locale=binding.locale,
        content=binding.content_hash,
        binds=binding.hash,
        code=free_code(binding.content_hash, _taken(ledger.records, binding)),
        by=proposal.by.id,
        author=", ".join(authors),
        on=proposal.on,
        review_by=proposal.protocol.review_by,
        waivers=proposal.accepted,
        demo=is_demo,
    )


def _taken(records: Iterable[Record], binding: Binding) -> dict[str, str]:
    return {
        each.code: each.content
        for each in records
        if (each.protocol, each.locale) == (binding.subject, binding.locale) and each.code and each.content
    }


def signed_in_place(ledger: Ledger, record: Record, private: Ed25519PrivateKey | None) -> Record:
    """The record as it follows in the chain, signed where there is a key."""
    if private is None:
        return record
    from signage.control.signatures import with_signature  # noqa: PLC0415 - an extra

    return with_signature(chained(ledger, record), private)


def withdraw(
    project: Project,
    protocol: Protocol,
    locale: str | None,
    by: Role,
    reason: str,
    on: date,
    private: Ed25519PrivateKey | None = None,
) -> Record:
    """Add the record that ends a protocol, or its words in a language; what is returned is on the disk."""
    record = Record(
        n=0,
        previous=BEFORE_ALL,
        kind=RecordKind.WITHDRAWAL,
        protocol=protocol.code,
        locale=locale,
        by=by.id,
        on=on,
        reason=reason,
        demo=project.library.is_demo,
    )

    def make(ledger: Ledger) -> Record:
        return _counting(project, ledger, signed_in_place(ledger, record, private))

    return approvals_file(project.content).append(make)


def _counting(project: Project, ledger: Ledger, record: Record) -> Record:
    """The record, if it would count; RefusedError otherwise, for whoever writes it believes that it does."""
    longer, added = with_record(ledger, record)
    why = judge(longer, project.library).discounted.get(added.n)
    if why:
        raise RefusedError(
            f"Nothing was written, since it would not count: {why}. "
            "Sign with the private key of the role ('--key FILE'); 'signage approvals make-key' makes one."
        )
    return record


def key_file(path: Path | None) -> Ed25519PrivateKey | None:
    """The private key in a file, None where none is named."""
    if path is None:
        return None
    from signage.control.signatures import read_key  # noqa: PLC0415 - an extra

    return read_key(path)


def record_of_key(
    project: Project, role: str, public: str, by: str, on: date, private: Ed25519PrivateKey
) -> Callable[[Ledger], Record]:
    """What makes the record of a new key; RefusedError where its signature would not count."""

    def make(ledger: Ledger) -> Record:
        record = Record(
            n=0,
            previous=BEFORE_ALL,
            kind=RecordKind.KEY,
            protocol="",
            by=by,
            author=role,
            on=on,
            key=public,
            demo=project.library.is_demo,
        )
        made = signed_in_place(ledger, record, private)
        longer, added = with_record(ledger, made)
        why = judge_signatures(longer.records, {}, are_required=False).faults.get(added.n)
        if why:
            raise RefusedError(
                f"Nothing was recorded: {why}. Sign with the key that is recorded for {by}, or, where there "
                "is none yet, with the private half of the new one."
            )
        return made

    return make
