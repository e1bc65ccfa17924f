"""waivers.yaml: findings of the rehearsal that somebody with the right to do so accepts until a day."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from typing import Annotated, Any

from signage.ground.problem import Problem
from signage.load import faults
from signage.load.building import build, table
from signage.load.declared import Names, judge, step_names
from signage.load.kind import Kind, fault_error, wanted_text
from signage.load.kinds import Identifier, IsoDate, Name, ReadableText
from signage.load.nodes import Node, Text, items_of, text_of
from signage.load.suggestion import nearest, shorten
from signage.load.validation import Entry
from signage.model.waiver import Waiver

_CODE = re.compile(r"[A-Z]{2}-[A-Z0-9]{1,2}")


def _read_rule_code(value: Any) -> str:
    text = wanted_text(value, "the code of a rule")
    if _CODE.fullmatch(text.upper()) is None:
        raise fault_error(
            faults.MALFORMED_NAME,
            f"'{shorten(text)}' is not the code of a rule.",
            "Write the code that the report names, such as HH-2.",
        )
    return text


RuleCode = Annotated[
    str,
    Kind(
        _read_rule_code,
        "code of a rule",
        "the code that a report names, such as HH-2",
        {"type": "string", "pattern": "^[A-Za-z]{2}-[A-Za-z0-9]{1,2}$"},
    ),
]
"""Two capital letters, a hyphen and a number or letter; whether the rule exists is judged elsewhere."""


class WaiverEntry(Entry):
    """One finding that is accepted; without a step it is a finding about the protocol as a whole."""

    code: RuleCode
    """The code of the finding that is accepted."""

    protocol: Identifier
    """The protocol that it is about."""

    step: Identifier | None = None
    """The step that it is about; without it, the protocol as a whole."""

    reason: ReadableText
    """Why it is accepted."""

    role: Name
    """The role that accepts it."""

    expires: IsoDate
    """The last day on which the waiver holds."""


class WaiversEntry(Entry):
    """All of waivers.yaml."""

    waivers: tuple[WaiverEntry, ...]
    """One entry for each finding that is accepted."""


def waiver_problems(
    node: Node, protocols: Sequence[Node | None], known_rules: Collection[str] | None
) -> Iterator[Problem]:
    """Rules, protocols and steps that do not exist.

    ``known_rules`` are the codes of the rules that can be waived; None leaves codes unjudged. Nothing is
    said about protocols and steps where a protocol file could not be read.
    """
    steps = _steps_by_protocol(protocols)
    for waiver in items_of(node, "waivers"):
        yield from _code_problems(text_of(waiver, "code"), known_rules)
        name = text_of(waiver, "protocol")
        if steps is None or name is None:
            continue
        yield from judge(name, dict.fromkeys(steps, "protocol"), "a protocol of this library")
        if name.text in steps:
            yield from judge(text_of(waiver, "step"), steps[name.text], f"a step of '{name.text}'")


def _steps_by_protocol(protocols: Sequence[Node | None]) -> Mapping[str, Names] | None:
    """The steps of each protocol; None where a file of a protocol could not be read."""
    found: dict[str, Names] = {}
    for protocol in protocols:
        if protocol is None:
            return None
        name = text_of(protocol, "protocol")
        if name is not None:
            found[name.text] = step_names(protocol)
    return found


def _code_problems(code: Text | None, known: Collection[str] | None) -> Iterator[Problem]:
    """A code that no rule has; capital letters matter, and the hint knows what was meant."""
    if code is None or known is None or code.text in known or _CODE.fullmatch(code.text.upper()) is None:
        return
    spelt = {rule.lower(): rule for rule in known}
    match = nearest(code.text, spelt)
    hint = f"Did you mean '{spelt[match]}'? " if match else ""
    yield faults.UNKNOWN_REFERENCE.at(
        code.place,
        f"'{shorten(code.text)}' is not a rule of the rehearsal.",
        f"{hint}'signage explain' lists all codes.",
    )


def build_waivers(entry: WaiversEntry, node: Node) -> tuple[Waiver, ...]:
    """The waivers of a valid waivers.yaml in the order of the file."""
    nodes = items_of(node, "waivers")
    return tuple(
        build(Waiver, waiver, table(each)) for waiver, each in zip(entry.waivers, nodes, strict=True)
    )
