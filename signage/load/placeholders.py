"""Placeholders in texts: known, and only where the step has what fills them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from signage.ground.problem import Problem
from signage.load import faults
from signage.load.declared import WardNames
from signage.load.step_grammar import actions_of
from signage.load.suggestion import shorten, suggest
from signage.load.yaml.nodes import Node, Text, child, entries_of, items_of, text_of, texts_of
from signage.model.messages import PLACEHOLDERS

_BRACES = re.compile(r"\{([^{}]*)\}|[{}]")
_STEP_TEXTS = ("text", "detail", "posture", "pace", "why", "caution")

FILLED_BY = {
    "time": ("seconds", "an action with 'seconds' or 'technique-of'"),
    "item": ("item", "an action with 'item'"),
    "bin": ("bin", "an action with 'bin'"),
    "zone": ("to", "an action that moves 'to' a zone"),
    "amount": ("amount", "an action with 'amount'"),
}
"""The key of an action that gives a placeholder its value, and how a message says so."""


def step_placeholder_problems(step: Node, ward: WardNames | None) -> Iterator[Problem]:
    """Placeholders of a step's texts that are unknown or that none of its actions fills."""
    actions = actions_of(step)
    for key in _STEP_TEXTS:
        text = text_of(step, key)
        if text is None:
            continue
        for match in _BRACES.finditer(text.text):
            name = match.group(1)
            if name not in PLACEHOLDERS:
                yield _unknown(text, match)
                continue
            wanted, wording = FILLED_BY[name]
            wanting = (wanted, "technique-of") if name == "time" else (wanted,)
            filling = [value for action in actions for key in wanting if (value := text_of(action, key))]
            if not filling:
                yield faults.PLACEHOLDER.problem(
                    f"{{{name}}} stands in '{key}', but it needs {wording}.",
                    text.place,
                    hint=f"Add '{wanted}:' to the step, or write the words out.",
                )
            elif name == "bin" and ward is not None and filling[0].text in ward.fixtures.keys() - ward.coded:
                yield faults.PLACEHOLDER.problem(
                    f"{{bin}} stands in '{key}', but '{filling[0].text}' has neither code nor name to show.",
                    text.place,
                    hint="Give the fixture a 'code' or a 'name' in the ward's file, or write the words out.",
                )


def brace_problems(text: Text | None) -> Iterator[Problem]:
    """Braces in a text that takes no placeholders, such as a title."""
    if text is None:
        return
    match = _BRACES.search(text.text)
    if match is not None:
        yield faults.PLACEHOLDER.problem(
            f"'{shorten(match.group())}' stands in a text that takes no placeholders.",
            text.place,
            hint="Placeholders stand in the texts of steps only; write the words out.",
        )


def name_brace_problems(node: Node) -> Iterator[Problem]:
    """Braces in the names and titles of any content file."""
    for key in ("name", "title", "owner"):
        yield from brace_problems(text_of(node, key))
    for group in ("garments", "items", "zones", "fixtures"):
        for entry in entries_of(node, group).values():
            yield from brace_problems(text_of(entry, "name"))
    for hazard in entries_of(node, "hazards").values():
        yield from brace_problems(text_of(hazard, "local-policy"))
    for phase in items_of(node, "phases"):
        for rule in texts_of(phase, "rules"):
            yield from brace_problems(rule)
        yield from brace_problems(text_of(phase, "title"))
        yield from brace_problems(text_of(phase, "rule"))
        for key in entries_of(phase, "notes"):
            yield from brace_problems(text_of(child(phase, "notes"), key))


def _unknown(text: Text, match: re.Match[str]) -> Problem:
    """A placeholder of another name, or a single brace."""
    if match.group(1) is None:
        return faults.PLACEHOLDER.problem(
            f"A single brace '{match.group()}' stands in the text.",
            text.place,
            hint="Braces only enclose a placeholder, such as {time}.",
        )
    known = [f"{{{name}}}" for name in sorted(PLACEHOLDERS)]
    return faults.PLACEHOLDER.problem(
        f"'{shorten(match.group())}' is not a placeholder.",
        text.place,
        hint=suggest(match.group(), known, "Placeholders"),
    )
