"""A recall: what must come down, the papers for it, earlier prints set aside, and whether it can end."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from signage.control.recall import Outcome, Recalled, outcome_of, recall_set, unused
from signage.control.register.store import Register
from signage.ground.made_files import made_file
from signage.model.copies import CopyState, Spot
from signage.model.current_sheet import CurrentSheets
from signage.model.library import Protocol
from signage.produce.drawn_files import DrawnFile, read_list
from signage.produce.publish import SITE_FOLDER
from signage.produce.released_list import published_state, read_published
from signage.produce.ward_forms import FormMaker
from signage.project import Project
from signage.words.standin import STAND_INS

SUPERSEDED = "superseded"
"""The folder, inside that for what is made, where earlier prints of a recalled protocol go."""

CLOSED = "recall-closed"


@dataclass(frozen=True)
class Recall:
    """The recall of a protocol as it stands: its copies, those never mounted, and how far it is."""

    protocol: Protocol
    recalled: tuple[Recalled, ...]
    unused: tuple[CopyState, ...]
    outcome: Outcome


def recall_of(project: Project, register: Register, current: CurrentSheets, protocol: Protocol) -> Recall:
    """What the register says of a protocol today; copies of recalls that were closed are told no more."""
    states, events = register.states(), register.events()
    told = {
        number
        for report in register.reports(CLOSED)
        if report.subject == protocol.id
        for number in json.loads(report.content)["numbers"]
    }
    return Recall(
        protocol,
        recall_set(project.library, states, current, protocol.id),
        unused(states, current, protocol.id),
        outcome_of(project.library, states, events, current, protocol.id, told),
    )


def recall_papers(maker: FormMaker, recall: Recall, current: CurrentSheets, output: Path) -> tuple[Path, ...]:
    """The list to walk with, and a notice for each slot and language where nothing takes the place."""
    made = []
    if recall.recalled:
        made.append(maker.recall_list(recall.protocol, recall.recalled, current, output))
    for tag, spot in notices(recall.recalled):
        notice_maker = FormMaker(maker.project, tag, maker.today)
        made.append(notice_maker.notice(recall.protocol, spot, output))
    return tuple(made)


def notices(recalled: Iterable[Recalled]) -> tuple[tuple[str, Spot], ...]:
    """Language and slot of each wall place that is left empty, in walking order."""
    empty = (
        (each.state.copy.locale, each.state.spot)
        for each in recalled
        if not each.has_successor and each.state.spot.slot
    )
    return tuple(dict.fromkeys(empty))


def set_aside(project: Project, output: Path, protocol: Protocol, current: CurrentSheets) -> tuple[str, ...]:
    """Move earlier prints of a protocol out of the way: those of another revision, or of what is withdrawn.

    Only files that the list of drawn files names. Returns their names below the folder.
    """
    moved = []
    for file in read_list(output):
        path = made_file(output, file.path)
        if path is None or file.protocol != protocol.id or not file.revision:
            continue
        if not _is_superseded(project, protocol, file, current):
            continue
        target = _free(output / SUPERSEDED / file.path)
        target.parent.mkdir(parents=True, exist_ok=True)
        path.replace(target)
        moved.append(file.path)
    return tuple(moved)


def _is_superseded(project: Project, protocol: Protocol, file: DrawnFile, current: CurrentSheets) -> bool:
    """Whether a drawn file shows neither what is in force nor the content as it is; stand-ins never are."""
    if file.locale in STAND_INS:
        return False
    sheet = current.get((protocol.id, file.locale))
    if sheet is None or sheet.is_withdrawn:
        return True
    in_force = {sheet.code} if sheet.hash is not None else set()
    return file.revision not in {project.revision(protocol, file.locale), *in_force}


def _free(path: Path) -> Path:
    """The path, or the first one with a number behind its name that nothing has taken yet."""
    number, found = 2, path
    while found.exists():
        found = path.with_name(f"{path.stem}-{number}{path.suffix}")
        number += 1
    return found


def open_points(project: Project, output: Path, recall: Recall, current: CurrentSheets) -> tuple[str, ...]:
    """What keeps a recall from being closed, as sentences; none where it may be."""
    points = []
    if recall.outcome.open:
        numbers = ", ".join(state.copy.number for state in recall.outcome.open)
        points.append(f"Still out: {numbers}. Record each as removed, destroyed, or lost with a note.")
    stale = stale_pages(project, output, recall.protocol, current)
    if stale:
        points.append(
            f"The pages in {output / SITE_FOLDER} still show the earlier state in {', '.join(stale)}. "
            "Run 'signage pages' and copy them to their server."
        )
    return tuple(points)


def stale_pages(
    project: Project, output: Path, protocol: Protocol, current: CurrentSheets
) -> tuple[str, ...]:
    """The languages in which the pages that were made last say something else than what is in force."""
    published = read_published(output / SITE_FOLDER)
    if published is None:
        return ("every language (no pages were made yet)",)
    stale = []
    for tag in project.library.locales:
        sheet = current.get((protocol.id, tag))
        now = published_state(sheet)
        if published.get(protocol.id, {}).get(tag, published_state(None)) != now:
            stale.append(tag)
    return tuple(stale)


def close(register: Register, recall: Recall, by_role: str, on: date) -> None:
    """Record that every copy of a recall is accounted for; the next recall begins after it."""
    content = json.dumps(
        {
            "numbers": [state.copy.number for state in recall.outcome.done],
            "ends": {
                state.copy.number: [state.state, state.last.on.isoformat(), state.last.note]
                for state in recall.outcome.done
                if state.last is not None
            },
        },
        ensure_ascii=False,
        sort_keys=True,
    )
    with register.changing():
        register.add_report(CLOSED, recall.protocol.id, on, by_role, content)
