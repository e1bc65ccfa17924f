"""policy.yaml: the local decisions, each with the source it rests on and the role that owns it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from signage.ground.problem import Problem
from signage.load import faults
from signage.load.building import build_each
from signage.load.kinds import (
    DECIMAL_NUMBER,
    WHOLE_NUMBER,
    YES_NO,
    Identifier,
    Name,
    ReadableText,
)
from signage.load.suggestion import nearest, shorten, suggest
from signage.load.validation import Entry
from signage.load.yaml.nodes import Node, Refused, Sequence, Table, Text, child, entries_of
from signage.model.library import PolicyScalar, PolicyValue

AGENTS = ("rub", "wash", "chlorine", "wipe")
"""What hands and surfaces are cleaned with."""

YES_NO_POLICIES = (
    "hygiene-each",
    "respirator-last",
    "soil-needs-wash",
    "chlorine-on-skin",
    "observer-for-removal",
    "needs-before-kit",
    "signatures-required",
)
NUMBER_POLICIES = (
    "min-rub",
    "min-wash",
    "min-wipe",
    "glove-hygiene-limit",
    "drying-seconds",
    "training-pages-days",
    "audit-days",
    "refresher-days",
)
AGENT_POLICIES = ("agents-on-glove", "agents-on-skin", "agents-on-kit")
CHOICE_POLICIES = {"critical-marks": ("every-s1", "exposure")}
KNOWN_POLICIES = (*YES_NO_POLICIES, *NUMBER_POLICIES, *AGENT_POLICIES, *CHOICE_POLICIES)
"""The values that the rehearsal and document control read; a library may hold others beside them."""

_NEARLY_KNOWN = 0.9
"""Likeness above which an unknown identifier is taken for a misspelt one; common practice, no source."""


class PolicyEntry(Entry):
    """One local decision. The kind of ``value`` depends on its identifier."""

    value: Any
    """The decision. Its kind depends on its identifier; those known are listed below."""

    source: ReadableText
    """The document that it rests on."""

    owner: Name
    """The role that answers for it."""


class PoliciesEntry(Entry):
    """All of policy.yaml."""

    policy: dict[Identifier, PolicyEntry]
    """Each decision by its identifier; others than those known may stand there too."""


def policy_problems(node: Node) -> Iterator[Problem]:
    """Values of the wrong kind and identifiers that are nearly known ones."""
    policy = child(node, "policy")
    for key, entry in entries_of(node, "policy").items():
        if key not in KNOWN_POLICIES and isinstance(policy, Table):
            match = nearest(key, KNOWN_POLICIES, _NEARLY_KNOWN)
            if match is not None:
                message = f"The policy value '{shorten(key)}' is not known, and it is nearly '{match}'."
                hint = f"Did you mean '{match}'? Choose a name that differs more if you mean another value."
                yield faults.UNKNOWN_KEY.problem(message, policy.key_place(key), hint=hint)
        value = child(entry, "value")
        if value is not None and not isinstance(value, Refused):
            yield from _value_problems(key, value)


def _value_problems(key: str, value: Node) -> Iterator[Problem]:
    """What is wrong with the value of one identifier."""
    if isinstance(value, Text) and value.is_absent:
        yield faults.WRONG_KIND.problem(
            f"'value' in '{shorten(key)}' has no value.", value.place, hint="Write the value."
        )
    elif key in YES_NO_POLICIES and not (isinstance(value, Text) and value.text in YES_NO):
        yield _wrong(key, value, "yes or no", "Write yes or no.")
    elif key in NUMBER_POLICIES and not (isinstance(value, Text) and WHOLE_NUMBER.fullmatch(value.text)):
        yield _wrong(key, value, "a whole number", "Write digits only, such as 20.")
    elif key in AGENT_POLICIES:
        yield from _agent_problems(key, value)
    elif key in CHOICE_POLICIES and not isinstance(value, Refused):
        yield from _choice_problems(key, value)
    elif isinstance(value, Table):
        yield _wrong(key, value, "a text, a number, yes or no, or a list of texts", "")
    elif isinstance(value, Sequence):
        for item in value.items:
            if not isinstance(item, (Text, Refused)) or (isinstance(item, Text) and item.is_absent):
                yield _wrong(key, item, "a text in the list", "")


def _choice_problems(key: str, value: Node) -> Iterator[Problem]:
    """A value that is none of the words to choose from."""
    words = CHOICE_POLICIES[key]
    if not isinstance(value, Text):
        yield _wrong(key, value, "one word", f"Write one of: {', '.join(words)}.")
    elif value.text not in words:
        message = f"'{shorten(value.text)}' is no choice for '{key}'."
        yield faults.UNKNOWN_WORD.problem(message, value.place, hint=suggest(value.text, words, "They are"))


def _agent_problems(key: str, value: Node) -> Iterator[Problem]:
    """A list of agents that is none, or that names an unknown one."""
    if not isinstance(value, Sequence):
        yield _wrong(key, value, "a list", "Write the agents in brackets, such as [rub, wash].")
        return
    for item in value.items:
        if isinstance(item, Text) and item.text not in AGENTS:
            message = f"'{shorten(item.text)}' in '{key}' is not an agent."
            yield faults.UNKNOWN_WORD.problem(
                message, item.place, hint=suggest(item.text, AGENTS, "They are")
            )
        elif not isinstance(item, (Text, Refused)):
            yield _wrong(key, item, "the name of an agent", "")


def _wrong(key: str, value: Node, wanted: str, hint: str) -> Problem:
    """A value of another kind than its identifier wants."""
    found = f"'{shorten(value.text)}'" if isinstance(value, Text) else "a list or mapping"
    return faults.WRONG_KIND.problem(
        f"'value' in '{shorten(key)}' is {found}; {wanted} was wanted.", value.place, hint=hint
    )


def read_value(key: str, value: Node) -> PolicyScalar | tuple[str, ...]:
    """The value of a valid policy entry: by its identifier where that is known, else as it is written."""
    if isinstance(value, Sequence):
        return tuple(item.text for item in value.items if isinstance(item, Text))
    assert isinstance(value, Text)
    if not value.is_plain and key not in KNOWN_POLICIES:
        return value.text
    if WHOLE_NUMBER.fullmatch(value.text):
        return int(value.text)
    if DECIMAL_NUMBER.fullmatch(value.text):
        return float(value.text)
    return YES_NO.get(value.text, value.text)


def build_policy(entry: PoliciesEntry, node: Node) -> dict[str, PolicyValue]:
    """The decisions of a valid policy.yaml in the order of the file."""
    nodes = child(node, "policy")

    def value(key: str, _entry: PolicyEntry) -> dict[str, PolicyScalar | tuple[str, ...]]:
        written = child(child(nodes, key), "value")
        assert written is not None
        return {"value": read_value(key, written)}

    return build_each(PolicyValue, entry.policy, nodes, more=value)
