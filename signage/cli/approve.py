"""``signage approve`` and ``signage withdraw``: a role signs, or ends, a protocol or its words."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from signage.cli.application import (
    CONTENT,
    LOCALES,
    ContentOption,
    Format,
    FormatOption,
    LocalesOption,
    typer_application,
)
from signage.cli.report import print_json, say, say_error
from signage.ground.errors import WrongUsageError

if TYPE_CHECKING:
    from signage.control.records import Record
    from signage.produce.approving import Proposal
    from signage.project import Project

ProtocolArgument = Annotated[str, typer.Argument(help="Id or code of the protocol, such as P3.")]
RoleOption = Annotated[str, typer.Option("--as", help="The id of the role that signs, of people.yaml.")]
KeyOption = Annotated[Path | None, typer.Option("--key", help="File of the private key to sign with.")]


@typer_application.command()
def approve(
    protocol: ProtocolArgument,
    locale: Annotated[str, typer.Option(help="Sign the words in this language instead of the steps.")] = "",
    as_role: RoleOption = "",
    review: Annotated[
        Path | None, typer.Option(help="Write all that is signed into this PDF, to read.")
    ] = None,
    yes: Annotated[str, typer.Option(help="The code that the review shows: sign without asking.")] = "",
    key: KeyOption = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
) -> int:
    """Sign the steps of a protocol with its source words, or its words in a language."""
    from signage.cli.choice import must_exist, protocol_named
    from signage.cli.kept import kept_of_user
    from signage.control.duties import acting_role
    from signage.ground.day import today
    from signage.ground.errors import RefusedError
    from signage.ground.files import write_whole
    from signage.produce.approving import propose
    from signage.produce.kept import KeptResults
    from signage.produce.review import review_pdf
    from signage.produce.signing import key_file, sign
    from signage.project import open_project

    project = open_project(content, locales, kept_of_user(is_fresh=False))
    name = protocol_named(project.library, protocol)
    must_exist([locale] if locale else [], project.library.locales, "locale")
    role = acting_role(project.library.people, as_role, "sign", lambda each: each.signs)
    if project.sign_offs.fault is not None:
        raise RefusedError(str(project.sign_offs.fault))
    private = key_file(key)
    chosen = project.library.protocols[name]
    proposal = propose(project, chosen, locale or None, role, today(), KeptResults(project))
    if review is not None:
        write_whole(review, review_pdf(project, proposal))
    if form is Format.TEXT:
        _tell(proposal, review)
    if proposal.objections:
        if form is Format.JSON:
            print_json(_as_json(proposal, review, ()))
        else:
            _tell_objections(proposal)
        return 1
    if not _is_wanted(proposal, yes, form, has_review=review is not None):
        if form is Format.JSON:
            print_json(_as_json(proposal, review, ()))
        return 0
    records = sign(project, proposal, private)
    if form is Format.JSON:
        print_json(_as_json(proposal, review, records))
    else:
        _tell_signed(project, proposal, records)
    return 0


def _tell(proposal: Proposal, review: Path | None) -> None:
    from signage.produce.review import passages_of

    for passage in passages_of(proposal)[:-1]:
        say(passage.head)
        for line in passage.lines:
            say(f"    {line}")
    if review is not None:
        say(f"Review: {review}")


def _tell_objections(proposal: Proposal) -> None:
    say_error(f"Not signed: {proposal.what}.")
    for objection in proposal.objections:
        say_error(str(objection))
        say_error(f"    {objection.cure}")


def _is_wanted(proposal: Proposal, yes: str, form: Format, *, has_review: bool) -> bool:
    """Whether to sign: by the code of the review, or asked for on a terminal; a review alone asks nothing."""
    import sys

    if yes:
        if yes.strip().upper() != proposal.confirmation:
            raise WrongUsageError(
                f"'{yes[:20]}' is not the code of what would be signed now: the content, the day or the "
                "role has changed, or it was mistyped. Nothing was signed. "
                "Make a review anew with '--review FILE' and read it."
            )
        return True
    if has_review or form is Format.JSON:
        return False
    if not sys.stdin.isatty():
        raise WrongUsageError(
            "Nothing was signed: nobody is there to be asked. Write a review with '--review FILE', read it, "
            "and run the command again with '--yes' and the code that it shows."
        )
    return typer.confirm(f"Sign {proposal.what} as {proposal.by.id}?")


def _tell_signed(project: Project, proposal: Proposal, records: tuple[Record, ...]) -> None:
    for record in records:
        what = "steps" if record.locale is None else f"words in {record.locale}"
        say(f"Signed: {what} of {record.protocol}, code {record.code}, by {record.by} (record {record.n}).")
    unsigned = [
        tag
        for tag in project.locales_in_use
        if tag != proposal.locale and tag not in project.sign_offs.of(proposal.protocol.code).words
    ]
    if project.library.is_demo:
        say("This library is a demonstration: its sheets say so, and none is for clinical use.")
    if unsigned:
        say(f"Still drafts, since nobody has signed their words: {', '.join(unsigned)}.")


def _as_json(proposal: Proposal, review: Path | None, records: tuple[Record, ...]) -> dict[str, object]:
    return {
        "protocol": proposal.protocol.code,
        "locale": proposal.bindings[0].locale,
        "by": proposal.by.id,
        "codes": list(proposal.codes),
        "confirmation": None if proposal.objections else proposal.confirmation,
        "review": None if review is None else review.as_posix(),
        "changes": None if proposal.changes is None else list(proposal.changes),
        "accepted": list(proposal.accepted),
        "objections": [{"reason": str(each), "cure": each.cure} for each in proposal.objections],
        "records": [record.as_json() for record in records],
    }


@typer_application.command()
def withdraw(
    protocol: ProtocolArgument,
    reason: Annotated[str, typer.Option(help="Why nobody may follow it any longer; no names.")] = "",
    locale: Annotated[str, typer.Option(help="Withdraw the words in this language alone.")] = "",
    as_role: RoleOption = "",
    key: KeyOption = None,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
) -> int:
    """End a protocol: from now on nothing of it is drawn, and its pages say so on every step."""
    from signage.cli.choice import must_exist, protocol_named
    from signage.control.duties import acting_role
    from signage.ground.day import today
    from signage.produce.signing import key_file
    from signage.produce.signing import withdraw as end
    from signage.project import open_project

    project = open_project(content, locales)
    name = protocol_named(project.library, protocol)
    must_exist([locale] if locale else [], project.library.locales, "locale")
    role = acting_role(project.library.people, as_role, "withdraw", lambda each: each.signs)
    if not reason.strip():
        raise WrongUsageError('A withdrawal needs its reason: add --reason "…"; it stands in every message.')
    chosen = project.library.protocols[name]
    record = end(project, chosen, locale or None, role, " ".join(reason.split()), today(), key_file(key))
    if form is Format.JSON:
        print_json({"record": record.as_json()})
        return 0
    what = f"the words of {chosen.code} in {locale}" if locale else chosen.code
    say(f"Withdrawn: {what}, by {role.id} (record {record.n}).")
    say("Nothing of it is drawn any longer. Publish the pages anew ('signage pages'), and recall the copies.")
    return 0
