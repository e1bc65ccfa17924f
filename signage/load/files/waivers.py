"""waivers.yaml: findings that somebody with the right to do so accepts until a day."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any

from signage.ground.problem import Problem, Severity
from signage.load import faults
from signage.load.building import build, table
from signage.load.declared import Names, judge, judge_tag, step_names
from signage.load.kind import Kind, fault_error, wanted_text
from signage.load.kinds import Identifier, IsoDate, LanguageTag, Name, ReadableText
from signage.load.suggestion import nearest, shorten
from signage.load.validation import Entry
from signage.load.yaml.nodes import Node, Text, items_of, text_of
from signage.model.waiver import Waiver

_OF_ONE_LANGUAGE = ("WD-", "PO-")
"""Beginnings of the codes of words."""

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
    """One finding that is accepted, of severity S2 or S3, wherever the report names it."""

    code: RuleCode
    """The code of the finding that is accepted."""

    protocol: Identifier | None = None
    """The protocol that it is about; left out where the report names none."""

    step: Identifier | None = None
    """The step that it is about; without it, the protocol as a whole."""

    locale: LanguageTag | None = None
    """The language that it is about, for a finding of words; without it, other findings in all languages."""

    sheet: ReadableText | None = None
    """The sheet that it is about, as the report names it or begins to; without it, all sheets."""

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
    node: Node,
    protocols: Sequence[Node | None],
    known_rules: Mapping[str, Severity] | None,
    locales: Names | None = None,
) -> Iterator[Problem]:
    """Rules that do not exist or that nobody can waive; protocols, steps and locales that do not exist.

    ``known_rules`` gives the severity of each rule by its code; None leaves codes unjudged. Nothing is
    said about protocols and steps where a protocol file could not be read.
    """
    steps = _steps_by_protocol(protocols)
    for waiver in items_of(node, "waivers"):
        code, locale = text_of(waiver, "code"), text_of(waiver, "locale")
        yield from _code_problems(code, known_rules)
        yield from judge_tag(locale, locales)
        if code is not None and locale is None and code.text.startswith(_OF_ONE_LANGUAGE):
            yield faults.MISSING_KEY.problem(
                f"{code.text} is a finding of words, which are accepted in one language at a time.",
                code.place,
                hint="Add a line that begins with 'locale:'.",
            )
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


def _code_problems(code: Text | None, known: Mapping[str, Severity] | None) -> Iterator[Problem]:
    """A code that no rule has, or of a rule so grave that nobody can accept its finding.

    Capital letters matter, and the hint knows what was meant.
    """
    if code is None or known is None or _CODE.fullmatch(code.text.upper()) is None:
        return
    if code.text in known:
        if known[code.text] is Severity.S1:
            yield faults.UNWAIVABLE.problem(
                f"Findings of {code.text} have severity S1, and nobody can accept them.",
                code.place,
                hint="Mend the finding, and delete the waiver.",
            )
        return
    spelt = {rule.lower(): rule for rule in known}
    match = nearest(code.text, spelt)
    hint = f"Did you mean '{spelt[match]}'? " if match else ""
    yield faults.UNKNOWN_REFERENCE.problem(
        f"'{shorten(code.text)}' is not the code of a rule.",
        code.place,
        hint=f"{hint}'signage explain' lists all codes.",
    )


def build_waivers(entry: WaiversEntry, node: Node) -> tuple[Waiver, ...]:
    """The waivers of a valid waivers.yaml in the order of the file."""
    nodes = items_of(node, "waivers")
    return tuple(
        build(Waiver, waiver, table(each)) for waiver, each in zip(entry.waivers, nodes, strict=True)
    )
