"""What is wished for copies, row by row, becomes events, or problems where it contradicts what is known."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import date

from signage.control.register.store import NewEvent
from signage.ground.place import Place
from signage.ground.problem import Problem, Reading
from signage.load.suggestion import shorten, suggest
from signage.model.copies import NOWHERE_YET, PRINTED, CopyState, Event, EventKind, Spot
from signage.model.current_sheet import CurrentSheets
from signage.model.library import Library
from signage.trials import ward_faults as faults
from signage.trials.ward_table import (
    MOST_FAULTS,
    Columns,
    Filled,
    read_day,
    read_learner,
    read_note,
    read_number,
    read_word,
)

MOUNT_COLUMNS = Columns(("number",), ("slot", "learner", "day", "note"))
REMOVE_COLUMNS = Columns(("number",), ("destroyed", "day", "note"))
REPLACE_COLUMNS = Columns(("number", "by"), ("day", "note"))
LOST_COLUMNS = Columns(("number", "note"), ("day",))

_YES = {"yes", "no"}
_ENDED = {EventKind.DESTROYED.value}


@dataclass
class Changes:
    """What is known while rows are read one after the other; later rows see what earlier ones change.

    ``current`` are the sheets that are released; ``today`` is the last day that a row may name.
    """

    library: Library
    current: CurrentSheets
    by_role: str
    today: date
    known: dict[str, CopyState]
    events: list[NewEvent] = field(default_factory=list)

    def add(self, kind: EventKind, state: CopyState, on: date, note: str, spot: Spot = NOWHERE_YET) -> None:
        """One more event; it is the state of its copy from now on."""
        number = state.copy.number
        event = NewEvent(number, kind, on, self.by_role, note, spot)
        last = Event(0, number, kind, on, self.by_role, note, spot)
        self.events.append(event)
        self.known[number] = replace(state, last=last, spot=spot if kind is EventKind.MOUNTED else state.spot)


Change = Mapping[str, object]


def begin(
    library: Library, current: CurrentSheets, states: Iterable[CopyState], by_role: str, today: date
) -> Changes:
    """The changes of one command, from what the register holds."""
    return Changes(library, current, by_role, today, {state.copy.number: state for state in states})


def plan(kind: str, rows: Iterable[Filled], changes: Changes) -> Reading[tuple[NewEvent, ...]]:
    """The events that rows ask for; ``kind`` is mount, remove, replace or lost.

    Problems of all rows are yielded; where there is one, nothing may be added.
    """
    read = _KINDS[kind]
    told = 0
    for row in rows:
        for problem in read(row, changes):
            told += 1
            yield problem
        if told >= MOST_FAULTS:
            message = f"More than {MOST_FAULTS} faults: the rows after this one were not read."
            yield faults.TABLE.problem(message, row.place, hint="Mend these first.")
            break
    return tuple(changes.events)


def _mount(row: Filled, changes: Changes) -> Iterator[Problem]:
    number = yield from read_number(row, "number", changes.known)
    learner = yield from read_learner(row, "learner")
    on = yield from read_day(row, "day", changes.today)
    note = yield from read_note(row)
    state = changes.known[number] if number else None
    spot = yield from _spot(row, changes.library, state, learner)
    if state is None or spot is None:
        return
    yield from _may_be_mounted(state, changes, row.at("number"))
    changes.add(EventKind.MOUNTED, state, on, note, spot)


def _remove(row: Filled, changes: Changes) -> Iterator[Problem]:
    number = yield from read_number(row, "number", changes.known)
    destroyed = yield from read_word(row, "destroyed", _YES, is_needed=False)
    on = yield from read_day(row, "day", changes.today)
    note = yield from read_note(row)
    if number is None:
        return
    state = changes.known[number]
    is_destroyed = destroyed == "yes"
    place = row.at("number")
    if state.state in _ENDED:
        yield faults.STATE.problem(f"Copy {number} was destroyed {_when(state)} already.", place)
    elif not is_destroyed and state.state in {PRINTED, EventKind.REMOVED.value}:
        hint = "Say that it was destroyed, if it was." if state.state == EventKind.REMOVED.value else ""
        yield faults.STATE.problem(f"Copy {number} is not mounted: {_told(state)}.", place, hint=hint)
    changes.add(EventKind.DESTROYED if is_destroyed else EventKind.REMOVED, state, on, note)


def _lost(row: Filled, changes: Changes) -> Iterator[Problem]:
    number = yield from read_number(row, "number", changes.known)
    on = yield from read_day(row, "day", changes.today)
    note = yield from read_note(row)
    if not note:
        yield faults.NO_NOTE.problem("No note says where the lost copy was looked for.", row.at("note"))
    if number is None:
        return
    state = changes.known[number]
    if state.state in {*_ENDED, EventKind.LOST.value}:
        message = f"Copy {number} cannot be lost: {_told(state)}."
        yield faults.STATE.problem(message, row.at("number"))
    changes.add(EventKind.LOST, state, on, note)


def _replace(row: Filled, changes: Changes) -> Iterator[Problem]:
    number = yield from read_number(row, "number", changes.known)
    by = yield from read_number(row, "by", changes.known)
    on = yield from read_day(row, "day", changes.today)
    note = yield from read_note(row)
    if number is None or by is None:
        return
    old, new = changes.known[number], changes.known[by]
    if not old.is_out:
        yield faults.STATE.problem(f"Copy {number} is not mounted: {_told(old)}.", row.at("number"))
    said = (old.copy.subject, old.copy.locale)
    if number == by or (new.copy.subject, new.copy.locale) != said:
        message = (
            f"Copy {by} ({_what(new)}) does not take the place of {number} ({_what(old)}): "
            "the same protocol in the same language was wanted."
        )
        hint = "Remove the one and mount the other, if that is what was done."
        yield faults.STATE.problem(message, row.at("by"), hint=hint)
    yield from _may_be_mounted(new, changes, row.at("by"))
    told = f"replaced by {by}"
    changes.add(EventKind.REPLACED, old, on, f"{told}: {note}" if note else told)
    changes.add(EventKind.REMOVED, changes.known[number], on, told)
    changes.add(EventKind.MOUNTED, new, on, f"in the place of {number}", old.spot)


_KINDS = {"mount": _mount, "remove": _remove, "lost": _lost, "replace": _replace}


def _spot(row: Filled, library: Library, state: CopyState | None, learner: str) -> Reading[Spot | None]:
    """Where a copy is mounted; None, with a problem, where the row does not say it, or says no slot."""
    text = row["slot"]
    if bool(text) == bool(row["learner"]):
        message = (
            "Both a slot and a learner stand here." if text else "Neither a slot nor a learner stands here."
        )
        yield faults.PLACE.problem(message, row.at("slot"), hint="Write one of the two.")
        return None
    if not text:
        return Spot(learner=learner) if learner else None
    slots = {
        f"{ward.id}/{slot.id}": Spot(ward.id, slot.id)
        for ward in library.wards.values()
        for slot in ward.slots
    }
    wanted = [spot for name, spot in slots.items() if text.casefold() in {name, spot.slot}]
    protocol = library.protocols.get(state.copy.subject) if state else None
    if len(wanted) > 1 and protocol is not None:
        wanted = [spot for spot in wanted if spot.ward == protocol.ward] or wanted
    if len(wanted) == 1:
        return wanted[0]
    if wanted:
        message = f"More than one ward has a slot '{shorten(text)}'."
        hint = f"Write one of {', '.join(map(str, wanted))}."
    else:
        message = f"There is no slot '{shorten(text)}'."
        hint = suggest(text, [*(spot.slot for spot in slots.values()), *slots], "Slots are")
    yield faults.PLACE.problem(message, row.at("slot"), hint=hint)
    return None


def _may_be_mounted(state: CopyState, changes: Changes, place: Place) -> Iterator[Problem]:
    """Only what is released today, and was printed as that, may hang on a wall."""
    copy = state.copy
    if state.state in {EventKind.DESTROYED.value, EventKind.LOST.value}:
        yield faults.STATE.problem(f"Copy {copy.number} cannot be mounted: {_told(state)}.", place)
        return
    current = changes.current.get((copy.subject, copy.locale))
    what = f"Copy {copy.number} ({_what(state)}, {copy.code})"
    if current is not None and current.is_withdrawn:
        yield faults.OUTDATED.problem(
            f"{what} must not be mounted: its protocol is withdrawn.", place, hint="Destroy the copy."
        )
    elif current is None or current.hash is None:
        message = f"{what} must not be mounted: no sign-off of it is in force in this language."
        yield faults.OUTDATED.problem(message, place, hint="Destroy the copy, or have the sheet signed.")
    elif copy.hash != current.hash:
        since = f" since {current.since.isoformat()}" if current.since else ""
        message = f"{what} is outdated: {current.code} is in force{since}."
        yield faults.OUTDATED.problem(message, place)
    elif not current.may_be_mounted:
        message = f"{what} must not be mounted: drawn today it would be a draft or refused."
        hint = "'signage draw' tells why; a library that is a demo says 'demo: yes'."
        yield faults.OUTDATED.problem(message, place, hint=hint)


def _what(state: CopyState) -> str:
    return f"{state.copy.sheet}, {state.copy.subject}, {state.copy.locale}"


def _told(state: CopyState) -> str:
    where = f" at {state.spot}" if state.is_out else ""
    return f"it is {state.state}{where} {_when(state)}".rstrip()


def _when(state: CopyState) -> str:
    return f"since {state.last.on.isoformat()}" if state.last else "and was never mounted"
