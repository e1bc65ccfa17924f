"""What ``signage draw`` tells: what was made, as what, what was refused and why, and what went away."""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path

from signage.cli.application import Format
from signage.cli.report import cell, print_json, say, say_error
from signage.ground.counting import counted
from signage.model.library import LocaleState
from signage.model.mark import Mark
from signage.produce.draw import Drawn, Refused
from signage.produce.drawn_files import Cleared
from signage.produce.requests import Wanted
from signage.produce.unmade import reasons_for_nothing
from signage.project import Project

_MOST_FINDINGS = 10
"""Findings of a protocol in a language that are told with its drafts."""
_DRAFTS = "Every sheet is marked DRAFT: nobody has signed its words and its order. Not for clinical use."
_SOME_DRAFTS = "Drafts are marked DRAFT: their words or their order are not signed. Not for clinical use."
_DEMONSTRATIONS = "Signed sheets are marked as a demonstration, since library.yaml says 'demo: yes'."
_PROOFS = (
    "Proofs have faults and are marked so on four edges: read them, mend what they name, never post them."
)


def report_drawn(
    project: Project,
    wanted: Wanted,
    made: Sequence[Drawn | Refused],
    cleared: Cleared,
    output: Path,
    form: Format,
    seconds: float,
    *,
    is_quiet: bool,
    copies: int = 0,
) -> int:
    """Print the outcome; ``copies`` is how many numbered ones of each sheet were asked for.

    The exit status is 1 where anything was refused or not made, a proof can hurt, or words were drawn that
    may be wrong. What else stands against the approval of a draft, such as a review that is due, is told and
    fails nothing: the draft says that nobody approved it.
    """
    unmade = reasons_for_nothing(project, wanted)
    sheets = [result for result in made if isinstance(result, Drawn)]
    refused = [result for result in made if isinstance(result, Refused)]
    status = int(bool(refused or unmade) or any(sheet.can_hurt or sheet.has_faulty_words for sheet in sheets))
    if form is Format.JSON:
        print_json(
            {
                "sheets": [sheet.as_json() for sheet in sheets],
                "refused": [refusal.as_json() for refusal in refused],
                "unmade": list(unmade),
                "kept": sum(sheet.is_kept for sheet in sheets),
                "removed": list(cleared.removed),
                "outdated": list(cleared.kept),
                "changed": list(cleared.changed),
                "seconds": seconds,
            }
        )
        return status
    if not is_quiet:
        _print_summary(sheets, output, seconds)
        _print_copies(sheets, copies)
        _print_cleared(cleared, output)
        _print_left_out(project, wanted)
    lines = (_proof_lines(sheets), _finding_lines(sheets), _unsigned_lines(project, sheets))
    for line in (*itertools.chain(*lines), *_refusal_lines(refused)):
        say_error(line)
    for reason in unmade:
        say_error(f"Not made: {reason}")
    return status


def _print_summary(sheets: Sequence[Drawn], output: Path, seconds: float) -> None:
    from rich.console import Console
    from rich.table import Table

    pages: Counter[tuple[str, str, str, str]] = Counter()
    files: Counter[tuple[str, str, str, str]] = Counter()
    for sheet in sheets:
        key = (sheet.request.locale, sheet.request.protocol, sheet.sheet_kind, sheet.mark.value)
        pages[key] += sheet.pages
        files[key] += 1
    table = Table(title=None, box=None, pad_edge=False)
    for heading in ("Language", "Protocol", "Sheet", "As"):
        table.add_column(heading)
    table.add_column("Files", justify="right")
    table.add_column("Pages", justify="right")
    for key, number in files.items():
        table.add_row(*map(cell, key), str(number), str(pages[key]))
    if sheets:
        Console(highlight=False).print(table)
    total = sum(sheet.pages for sheet in sheets)
    say(f"{counted(len(sheets), 'file')}, {counted(total, 'page')} in {output}/, {seconds:.1f} s.")
    kept = sum(sheet.is_kept for sheet in sheets)
    if kept:
        say(f"{len(sheets) - kept} drawn anew; {kept} are as they were.")
    marks = {sheet.mark for sheet in sheets}
    if Mark.DRAFT in marks:
        say(_SOME_DRAFTS if any(mark.is_released for mark in marks) else _DRAFTS)
    if Mark.DEMONSTRATION in marks:
        say(_DEMONSTRATIONS)
    if Mark.PROOF in marks:
        say(_PROOFS)


def _print_copies(sheets: Sequence[Drawn], copies: int) -> None:
    """The files with numbered copies, and how many sheets got no number though numbers were asked for."""
    numbered = [sheet for sheet in sheets if sheet.request.copies]
    for sheet in numbered:
        first, *rest = sheet.request.copies
        numbers = f"{first} to {rest[-1]}" if rest else first
        say(f"{counted(len(sheet.request.copies), 'copy', 'copies')} {numbers}: {sheet.path}")
    if copies and len(numbered) < len(sheets):
        say(
            f"{counted(len(sheets) - len(numbered), 'file')} without numbers: only released sheets about a "
            "protocol get them, for nothing else may be mounted."
        )


def _print_cleared(cleared: Cleared, output: Path) -> None:
    for what, names in (
        ("Removed as outdated", cleared.removed),
        ("Outdated, and kept as asked", cleared.kept),
        ("Outdated, but changed since it was drawn, so left", cleared.changed),
    ):
        for name in names:
            say(f"{what}: {output / name}")


def _print_left_out(project: Project, wanted: Wanted) -> None:
    for tag, locale in project.library.locales.items():
        if wanted.locales and tag not in wanted.locales:
            continue
        if locale.state is LocaleState.IN_WORK and not wanted.locales:
            say(
                f"Left out: {tag} is in work; 'signage words progress' tells how far it is, "
                f"'signage draw --locale {tag} --proof' prints proofs."
            )
        elif locale.protocols and not wanted.protocols and not wanted.is_for_proof:
            named = ", ".join(project.library.protocols[name].code for name in locale.protocols)
            say(f"Left out: {tag} is in use for {named} only.")


def _proof_lines(sheets: Iterable[Drawn]) -> Iterable[str]:
    """Why sheets are proofs, once for each protocol and language."""
    told: dict[tuple[str, str, str], None] = {}
    for sheet in sheets:
        if sheet.mark is Mark.PROOF:
            for reason in sheet.reasons:
                told[sheet.request.protocol, sheet.request.locale, reason] = None
    for protocol, locale, reason in told:
        yield f"Proof: {', '.join(part for part in (protocol, locale) if part)}: {reason}"


def _finding_lines(sheets: Iterable[Drawn]) -> Iterable[str]:
    """What stands against the approval of drafts, once for each protocol and language."""
    told: dict[tuple[str, str], dict[str, None]] = {}
    for sheet in sheets:
        if sheet.has_findings:
            key = (sheet.request.protocol, sheet.request.locale)
            told.setdefault(key, {}).update(dict.fromkeys(sheet.reasons))
    for (protocol, locale), reasons in told.items():
        yield f"Draft with findings: {protocol}, {locale}"
        yield from (f"    {reason}" for reason in list(reasons)[:_MOST_FINDINGS])
        if len(reasons) > _MOST_FINDINGS:
            yield f"    {len(reasons) - _MOST_FINDINGS} more; 'signage check' tells all."


def _unsigned_lines(project: Project, sheets: Iterable[Drawn]) -> Iterable[str]:
    """Why drafts of what was signed before are drafts, once for each protocol and language."""
    told: dict[tuple[str, str], dict[str, None]] = {}
    for sheet in sheets:
        protocol = project.library.protocols.get(sheet.request.protocol)
        if sheet.mark is not Mark.DRAFT or sheet.has_findings or protocol is None:
            continue
        tag = sheet.request.locale
        if project.sign_offs.fault or project.sign_offs.last(protocol.code, tag):
            told.setdefault((protocol.id, tag), {}).update(dict.fromkeys(sheet.reasons))
    for (name, locale), reasons in told.items():
        yield f"Draft that was signed: {name}, {locale}"
        yield from (f"    {reason}" for reason in list(reasons)[:_MOST_FINDINGS])


def _refusal_lines(refused: Iterable[Refused]) -> Iterable[str]:
    """Refusals of one cause together: the sheets, then each reason on a line of its own."""
    groups: dict[tuple[str, str, tuple[str, ...], Mark], dict[str, list[str]]] = {}
    for refusal in refused:
        request = refusal.request
        key = (request.protocol, request.locale, refusal.reasons, refusal.on_request)
        groups.setdefault(key, {}).setdefault(refusal.kind, []).append(request.paper)
    for (protocol, locale, reasons, on_request), kinds in groups.items():
        what = "; ".join(f"{kind} {', '.join(papers)}" for kind, papers in kinds.items())
        yield f"Refused: {', '.join(part for part in (protocol, locale) if part)}: {what}"
        for reason in reasons:
            yield f"    {reason}"
        if on_request is Mark.PROOF:
            yield "    With --proof it is printed to be read through, with its faults outlined."
