"""The cells of a status in words, for the page and for the terminal."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.counting import counted
from signage.model.mark import Mark
from signage.model.status import ProtocolStatus, SheetStatus

_MARKS = {
    Mark.NONE: "released",
    Mark.DEMONSTRATION: "demonstration",
    Mark.DRAFT: "draft",
    Mark.PROOF: "refused (proof only)",
    Mark.REFUSED: "refused",
}


@dataclass(frozen=True)
class Row:
    """What is told of the languages ``tags`` alike; ``sheet`` is that of the first."""

    tags: tuple[str, ...]
    sheet: SheetStatus
    words: str
    prints_as: str
    signed: str


def rows_of(protocol: ProtocolStatus) -> tuple[Row, ...]:
    """The rows of a protocol; languages of which the same is told share one."""
    found: dict[tuple[object, ...], list[SheetStatus]] = {}
    for sheet in protocol.sheets:
        told = (word_words(sheet), mark_words(sheet), sign_off_words(sheet), sheet.mounted, sheet.obsolete)
        found.setdefault(told, []).append(sheet)
    return tuple(
        Row(
            tuple(sheet.locale for sheet in sheets),
            sheets[0],
            word_words(sheets[0]),
            mark_words(sheets[0]),
            sign_off_words(sheets[0]),
        )
        for sheets in found.values()
    )


def word_words(sheet: SheetStatus) -> str:
    """How far its words are: what is wanting, or that all is checked."""
    if not sheet.can_be_read:
        return "cannot be read"
    words = sheet.words
    told = (
        f"{words.missing} missing" if words.missing else "",
        f"{words.doubtful} doubtful" if words.doubtful else "",
        f"{words.translated} unchecked" if words.translated else "",
    )
    return ", ".join(filter(None, told)) or f"all {words.checked} checked"


def mark_words(sheet: SheetStatus) -> str:
    """What a draw would print."""
    if sheet.is_withdrawn:
        return "withdrawn"
    if not sheet.is_in_use:
        return "in work (proof only)"
    return _MARKS[sheet.mark]


def sign_off_words(sheet: SheetStatus) -> str:
    """Who signed, and when; what is only signed in part or has changed since says so."""
    if sheet.signed_by is None or sheet.signed_on is None:
        return "nobody"
    signed = f"{sheet.signed_by} {sheet.signed_on.isoformat()}"
    if not sheet.is_signed:
        return f"{signed} ({'steps' if sheet.is_order_signed else 'words'} only)"
    return f"{signed}, changed since" if sheet.has_changed else signed


def finding_words(protocol: ProtocolStatus) -> str:
    """What content, words, rehearsal and sheets have against it."""
    counts = protocol.findings.as_json()
    told = ", ".join(f"{number} {severity}" for severity, number in counts.items() if number)
    unseen = f", {counted(protocol.unseen, 'sheet')} not looked at" if protocol.unseen else ""
    return f"{told or 'no findings'}{unseen}"
