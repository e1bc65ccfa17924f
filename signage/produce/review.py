"""The review of a proposal as one PDF: what would be signed, with the code that says yes to it."""

from __future__ import annotations

from signage.compose.review_sheet import Passage, review_sheet
from signage.ground.counting import counted
from signage.model.mark import Mark
from signage.produce.approving import Proposal
from signage.project import Project

NO_CHANGE = "Nothing that is signed has changed."


def review_pdf(project: Project, proposal: Proposal) -> bytes:
    """The PDF. The sheets in it are drafts in small; their codes can be scanned like those of the drafts."""
    from signage.paint.pdf.document import paint_pdf  # noqa: PLC0415 - the PDF library is slow to load

    context = project.context(proposal.protocol, project.library.source_locale, mark=Mark.DRAFT)
    title = f"Review before signing: {proposal.what}"
    foot = f"{title} · {proposal.by.id} · {proposal.on.isoformat()} · {proposal.confirmation}"
    sheet = review_sheet(context, title, foot, passages_of(proposal), proposal.sheets)
    return paint_pdf(sheet)


def passages_of(proposal: Proposal) -> tuple[Passage, ...]:
    """All that is told of a proposal, in the order in which it is read."""
    protocol = proposal.protocol
    parts = " and ".join(
        f"{'steps' if each.locale is None else f'words in {each.locale}'} {code}"
        for each, code in zip(proposal.bindings, proposal.codes, strict=True)
    )
    words = proposal.words
    states = ", ".join(f"{number} {state}" for state, number in words.as_json().items())
    sheets = counted(len(proposal.sheets), "sheet")
    wrote = dict.fromkeys(name for each in proposal.authors for name in each)
    what = (
        f"{protocol.code} {protocol.title}, revision {protocol.revision}: {parts}.",
        f"Signs: {proposal.by.id}. Wrote or translated it: {', '.join(wrote) or 'nobody named'}.",
        f"Review by {protocol.review_by.isoformat()}. In {proposal.locale}: {sheets}.",
        f"Words in {proposal.locale}: {counted(words.total, 'text')}: {states}.",
    )
    against = tuple(f"{each} {each.cure}" for each in proposal.objections)
    changes = proposal.changes
    return (
        Passage("What is signed", what),
        Passage("What stands against it", against or ("Nothing.",)),
        Passage(
            "Findings",
            tuple(f"{each.severity} {each.code} {each.message}" for each in proposal.findings) or ("None.",),
        ),
        Passage("Accepted findings (waivers)", proposal.accepted or ("None.",)),
        Passage(
            "Changed since it was last signed",
            ("It is signed for the first time.",) if changes is None else changes or (NO_CHANGE,),
        ),
        Passage("To sign", _how(proposal)),
    )


def _how(proposal: Proposal) -> tuple[str, ...]:
    if proposal.objections:
        return ("It cannot be signed yet.",)
    words = "" if proposal.bindings[0].locale is None else f" --locale {proposal.locale}"
    command = (
        f"signage approve {proposal.protocol.code}{words} --as {proposal.by.id} --yes {proposal.confirmation}"
    )
    return (
        f"Read every sheet below. Then: {command}",
        "The code holds today, for exactly this content.",
        "It does not say who you are: whoever can write these files can sign in the name of any role.",
    )
