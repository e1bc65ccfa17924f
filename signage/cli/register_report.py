"""What the commands of the register tell."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from signage.cli.application import Format
from signage.cli.report import cell, print_json, print_problems, problems_json, say
from signage.ground.counting import counted

if TYPE_CHECKING:
    from collections.abc import Sequence

    from signage.control.register.store import NewEvent
    from signage.ground.problem import Problem
    from signage.model.copies import CopyState, Event


def tell_problems(problems: Sequence[Problem], form: Format) -> None:
    """Why nothing was written."""
    if form is Format.JSON:
        print_json(problems_json(problems))
        return
    print_problems(problems)
    say("Nothing was written into the register.")


def tell_changes(events: Sequence[NewEvent], form: Format, *, quiet: bool) -> None:
    """What was written."""
    if form is Format.JSON:
        print_json({"changes": [_event_json(event) for event in events]})
    elif not quiet:
        for event in events:
            say(f"{event.number} {event.kind.value}{f': {event.spot}' if str(event.spot) else ''}")


def _event_json(event: Any) -> dict[str, str | None]:
    return {
        "number": event.number,
        "happened": event.kind.value,
        "day": event.on.isoformat(),
        "by": event.by_role,
        "ward": event.spot.ward or None,
        "slot": event.spot.slot or None,
        "learner": event.spot.learner or None,
        "note": event.note or None,
    }


def _as_json(state: CopyState) -> dict[str, str | None]:
    copy = state.copy
    return {
        "number": copy.number,
        "sheet": copy.sheet,
        "protocol": copy.subject,
        "locale": copy.locale,
        "revision": copy.code,
        "state": state.state,
        "ward": state.spot.ward or None,
        "slot": state.spot.slot or None,
        "learner": state.spot.learner or None,
        "day": (state.last.on if state.last else copy.printed_on).isoformat(),
        "printed": copy.printed_on.isoformat(),
    }


def tell_history(states: Sequence[CopyState], events: Sequence[Event], number: str, form: Format) -> int:
    """One copy with all that happened to it; 1 where no copy has the number."""
    from signage.ground.problem import with_problems
    from signage.trials.ward_table import read_number, typed

    known = {state.copy.number: state for state in states}
    found, problems = with_problems(read_number(typed(number=number), "number", known))
    if found is None:
        print_json(problems_json(problems)) if form is Format.JSON else print_problems(problems)
        return 1
    events = [each for each in events if each.number == found]
    state = known[found]
    if form is Format.JSON:
        print_json({"copy": _as_json(state), "events": [_event_json(event) for event in events]})
        return 0
    copy = state.copy
    say(f"{copy.number}: {copy.sheet}, {copy.subject}, {copy.locale}, {copy.code}")
    say(f"  {copy.printed_on.isoformat()} printed by {copy.by_role or 'nobody named'}")
    for event in events:
        where = f" {event.spot}" if str(event.spot) else ""
        told = f": {event.note}" if event.note else ""
        say(f"  {event.on.isoformat()} {event.kind.value}{where} by {event.by_role}{told}")
    return 0


def _print_table(states: Sequence[CopyState]) -> None:
    import sys

    from rich.console import Console
    from rich.table import Table

    table = Table(box=None, pad_edge=False)
    for heading in ("Number", "State", "Where", "Sheet", "Protocol", "Language", "Revision", "Since"):
        table.add_column(heading, no_wrap=True)
    for state in states:
        copy = state.copy
        since = state.last.on if state.last else copy.printed_on
        where = str(state.spot) if state.is_out else ""
        table.add_row(
            *map(
                cell,
                (copy.number, state.state, where, copy.sheet, copy.subject, copy.locale, copy.code, since),
            )
        )
    Console(highlight=False, soft_wrap=True, width=None if sys.stdout.isatty() else 160).print(table)
    out = sum(state.is_out for state in states)
    say(f"{counted(len(states), 'copy', 'copies')}, {out} of them mounted or handed out.")


def nothing_told(count: int) -> str:
    """Why no copy is shown; ``count`` are there."""
    if count:
        return f"None of the {counted(count, 'copy', 'copies')} of this library is meant."
    return (
        "No copy of this library has a number yet: 'signage draw --copies 2' numbers the released sheets "
        "that it draws."
    )


def tell_copies(shown: Sequence[CopyState], count: int, form: Format, *, quiet: bool) -> None:
    """Copies as a table; ``count`` are there in all."""
    if form is Format.JSON:
        print_json({"copies": [_as_json(each) for each in shown]})
    elif shown:
        _print_table(shown)
    elif not quiet:
        say(nothing_told(count))
