"""What needs whom: the duties that follow from where a library stands, the most pressing first."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from datetime import timedelta

from signage.ground.counting import counted
from signage.model.mark import Mark
from signage.model.people import People, Role
from signage.model.status import LanguageStatus, LibraryStatus, ProtocolStatus, SheetStatus, Task

REVIEW_NOTICE = timedelta(days=60)
"""How long before its day a review is called for. Common practice, no source."""


def tasks_of(status: LibraryStatus, people: People) -> tuple[Task, ...]:
    """The tasks in the order in which a late answer hurts.

    First what hangs on walls and is wrong, then what can hurt when it is printed, then what keeps sheets
    from being released, then what is merely due.
    """
    return tuple(task for find in _DUTIES for task in find(status, people))


def _records(status: LibraryStatus, people: People) -> Iterator[Task]:
    if status.fault:
        yield Task(
            _named(_ids(people, lambda role: role.signs)),
            f"No sign-off counts: {status.fault}",
            "",
            "signage approvals list",
        )


def _recalls(status: LibraryStatus, people: People) -> Iterator[Task]:
    """Copies out that show what is no longer so, by protocol, most copies first.

    Where no sign-off can be read nobody knows which copies these are.
    """
    if status.fault:
        return
    counts = {each.code: sum(sheet.obsolete for sheet in each.sheets) for each in status.protocols}
    everything = {**{code: number for code, number in counts.items() if number}, **status.strays}
    for code, number in sorted(everything.items(), key=lambda item: -item[1]):
        copies = counted(number, "copy of it is out and obsolete", "copies of it are out and obsolete")
        yield Task(
            _named(_ids(people, lambda role: role.mounts)), f"{code}: {copies}", "", f"signage recall {code}"
        )


def _grave(status: LibraryStatus, people: People) -> Iterator[Task]:
    for each in status.protocols:
        if each.findings.s1:
            found = counted(each.findings.s1, "finding that can hurt", "findings that can hurt")
            yield Task(
                _author(people, each),
                f"{each.code}: {found} (S1)",
                each.path,
                "signage check",
            )


def _overdue(status: LibraryStatus, people: People) -> Iterator[Task]:
    for each in status.protocols:
        if each.review_by < status.day:
            what = f"{each.code}: review overdue since {each.review_by.isoformat()}; it prints as a draft"
            yield Task(_author(people, each), what, each.path)


def _standing(status: LibraryStatus, people: People) -> Iterator[Task]:
    for each in status.protocols:
        if each.findings.s2:
            found = counted(each.findings.s2, "finding", "findings")
            what = f"{each.code}: {found} to mend or to waive before it can be signed (S2)"
            yield Task(_author(people, each), what, each.path, "signage check")


def _gaps(status: LibraryStatus, people: People) -> Iterator[Task]:
    """Of languages in use: a gap refuses sheets."""
    for each in status.languages:
        if each.is_in_use and not each.words.are_complete:
            refused = [
                protocol.code
                for protocol in status.protocols
                for sheet in protocol.sheets
                if sheet.locale == each.tag and _is_wanted(sheet) and not sheet.words.are_complete
            ]
            follows = f"; no sheets of {', '.join(refused)}" if refused else ""
            yield Task(_translator(people, each), f"{each.tag}: {_gap_words(each)}{follows}", each.path)


def _changes(status: LibraryStatus, people: People) -> Iterator[Task]:
    """What was signed and is another now; gaps and unchecked words have tasks of their own."""
    for each in status.protocols:
        changed = [
            sheet.locale
            for sheet in each.sheets
            if sheet.is_signed
            and sheet.has_changed
            and sheet.mark is Mark.DRAFT
            and not sheet.words.translated
        ]
        if changed:
            what = (
                f"{each.code}: changed since it was signed in {', '.join(changed)}; compare, then sign anew"
            )
            yield _to_sign(status, people, each, what, changed)


def _checks(status: LibraryStatus, people: People) -> Iterator[Task]:
    for each in status.languages:
        if each.is_in_use and each.words.translated:
            wanting = [
                protocol.code
                for protocol in status.protocols
                for sheet in protocol.sheets
                if sheet.locale == each.tag and _is_wanted(sheet) and sheet.words.translated
            ]
            texts = counted(each.words.translated, "text") + " that no second person has checked"
            what = f"{each.tag}: {texts}" + (f" ({', '.join(wanting)})" if wanting else "")
            ids = _checkers(people, each.tag)
            of = f" --protocol {wanting[0]}" if wanting else ""
            command = f"signage words check-off {each.tag}{of}{_as(ids)}"
            yield Task(_named(ids), what, each.path, command)


def _signatures(status: LibraryStatus, people: People) -> Iterator[Task]:
    """What may be signed now; what something stands against has a task of its own."""
    for each in status.protocols:
        ready = [sheet for sheet in each.sheets if _may_be_signed(each, sheet, status)]
        unsigned = [sheet.locale for sheet in ready if not sheet.are_words_signed]
        if ready and not all(sheet.is_order_signed for sheet in ready):
            others = [tag for tag in unsigned if tag != status.source]
            then = f", then its words in {', '.join(others)}" if others else ""
            what = f"{each.code}: sign its steps with its words in {status.source}{then}"
            yield _to_sign(status, people, each, what, [status.source])
        elif unsigned:
            what = f"{each.code}: sign its words in {', '.join(unsigned)}"
            yield _to_sign(status, people, each, what, unsigned)


def _may_be_signed(protocol: ProtocolStatus, sheet: SheetStatus, status: LibraryStatus) -> bool:
    return (
        _is_wanted(sheet)
        and sheet.mark is Mark.DRAFT
        and sheet.words.are_complete
        and not sheet.words.translated
        and not protocol.findings.s1
        and not protocol.findings.s2
        and status.day <= protocol.review_by
        and not sheet.is_signed
    )


def _is_wanted(sheet: SheetStatus) -> bool:
    """Whether sheets are to be printed of it: what was withdrawn waits for nobody."""
    return sheet.is_in_use and not sheet.is_withdrawn


def _to_sign(
    status: LibraryStatus, people: People, protocol: ProtocolStatus, what: str, locales: Sequence[str]
) -> Task:
    """The source words are signed together with the steps; nobody signs their own work."""
    ids = _ids(people, lambda role: role.signs and not role.is_author_of(protocol.id))
    locale = "" if status.source in locales else f" --locale {locales[0]}"
    return Task(_named(ids), what, protocol.path, f"signage approve {protocol.code}{locale}{_as(ids)}")


def _reviews(status: LibraryStatus, people: People) -> Iterator[Task]:
    for each in status.protocols:
        if status.day <= each.review_by <= status.day + REVIEW_NOTICE:
            yield Task(
                _author(people, each), f"{each.code}: review due by {each.review_by.isoformat()}", each.path
            )


def _unseen(status: LibraryStatus, people: People) -> Iterator[Task]:
    number = sum(each.unseen for each in status.protocols)
    if number:
        sheets = counted(
            number, "sheet that no check has seen as it is", "sheets that no check has seen as they are"
        )
        yield Task(_named(_ids(people, lambda role: bool(role.writes))), sheets, "", "signage check")


def _progress(status: LibraryStatus, people: People) -> Iterator[Task]:
    """Of languages in work: a gap is progress."""
    for each in status.languages:
        if not each.is_in_use and not each.words.are_complete:
            yield Task(_translator(people, each), f"{each.tag}, in work: {_gap_words(each)}", each.path)


_DUTIES: Sequence[Callable[[LibraryStatus, People], Iterator[Task]]] = (
    _records,
    _recalls,
    _grave,
    _overdue,
    _standing,
    _gaps,
    _changes,
    _checks,
    _signatures,
    _reviews,
    _unseen,
    _progress,
)


def _gap_words(language: LanguageStatus) -> str:
    if language.fault:
        return f"its words cannot be read: {language.fault}"
    words = language.words
    told = (
        f"{counted(words.missing, 'text')} missing" if words.missing else "",
        f"{counted(words.doubtful, 'text')} doubtful" if words.doubtful else "",
    )
    return ", ".join(filter(None, told))


def _ids(people: People, may: Callable[[Role], bool]) -> tuple[str, ...]:
    """The ids of the roles that may do something."""
    return tuple(role.id for role in people.values() if may(role))


def _named(ids: Sequence[str], otherwise: str = "nobody yet: see content/people.yaml") -> str:
    return " or ".join(ids) or otherwise


def _as(ids: Sequence[str]) -> str:
    """How a command is told who acts."""
    return f" --as {ids[0]}" if ids else ""


def _author(people: People, protocol: ProtocolStatus) -> str:
    return _named(_ids(people, lambda role: role.is_author_of(protocol.id)), protocol.owner)


def _translator(people: People, language: LanguageStatus) -> str:
    return _named(_ids(people, lambda role: language.tag in role.translates), language.owner)


def _checkers(people: People, tag: str) -> tuple[str, ...]:
    return _ids(people, lambda role: tag in role.checks)
