"""What the files declare, read from their nodes, so that references can be judged beside other faults.

A name that stands in a faulty entry is declared all the same; where a whole file could not be read, its
names are None and nothing that refers to them is judged.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from signage.ground.language import is_well_formed, two_letter_form
from signage.ground.problem import Problem
from signage.load import faults
from signage.load.kinds import IDENTIFIER, WHOLE_NUMBER
from signage.load.step_grammar import steps_of
from signage.load.suggestion import shorten, suggest
from signage.load.yaml.nodes import Node, Text, entries_of, items_of, text_of, texts_of

Names = Mapping[str, str]
"""Declared identifiers with the kind of thing each is, such as ``{"bin-a": "bin"}``."""


@dataclass(frozen=True)
class WardNames:
    """What one ward declares."""

    zones: Names
    fixtures: Names
    coded: frozenset[str] = frozenset()
    """The fixtures that carry a code on their label."""


@dataclass(frozen=True)
class Declared:
    """All that the files of a library declare."""

    kit: Names | None = None
    fasteners: Mapping[str, frozenset[str]] = field(default_factory=dict)
    checks: Mapping[str, frozenset[str]] = field(default_factory=dict)
    on_hands: frozenset[str] = frozenset()
    policy: Names | None = None
    locales: Names | None = None
    wards: Mapping[str, WardNames] = field(default_factory=dict)
    protocols: Mapping[str, frozenset[str]] = field(default_factory=dict)
    """Protocol to its phases."""

    techniques: Names = field(default_factory=dict)
    """``protocol/phase`` of every hand technique."""

    adjusters: Mapping[str, frozenset[str]] = field(default_factory=dict)
    parts: Mapping[str, frozenset[str]] = field(default_factory=dict)
    models: Mapping[str, frozenset[str]] = field(default_factory=dict)

    codes: frozenset[str] = frozenset()
    """The codes of the protocols."""

    is_complete: bool = True
    """Whether every ward and protocol file could be read as YAML."""


def gather(
    library: Node | None,
    kit: Node | None,
    policy: Node | None,
    wards: Sequence[Node | None],
    protocols: Sequence[Node | None],
) -> Declared:
    """The declarations of all files; None stands for a file that could not be read."""
    garments, items = entries_of(kit, "garments"), entries_of(kit, "items")
    everything = {**garments, **items}
    return Declared(
        kit=None
        if kit is None
        else {**dict.fromkeys(items, "item that is not worn"), **dict.fromkeys(garments, "garment")},
        fasteners={key: frozenset(entries_of(node, "fasteners")) for key, node in everything.items()},
        adjusters={key: _words(node, "adjusters") for key, node in everything.items()},
        parts={key: frozenset(entries_of(node, "parts")) for key, node in everything.items()},
        models={key: frozenset(entries_of(node, "models")) for key, node in garments.items()},
        checks={key: _words(node, "checks") for key, node in everything.items()},
        on_hands=frozenset(key for key, node in garments.items() if "hands" in _words(node, "covers")),
        policy=None if policy is None else _policy_kinds(policy),
        locales=None if library is None else dict.fromkeys(entries_of(library, "locales"), "locale"),
        wards={name.text: _ward(node) for node in wards if (name := text_of(node, "ward"))},
        protocols={name.text: _phases(node) for node in protocols if (name := text_of(node, "protocol"))},
        techniques={name: "technique" for node in protocols for name in _techniques(node)},
        codes=frozenset(code.text for node in protocols if (code := text_of(node, "code"))),
        is_complete=None not in (*wards, *protocols),
    )


def _words(node: Node, key: str) -> frozenset[str]:
    """The texts of a list."""
    return frozenset(item.text for item in texts_of(node, key))


def _policy_kinds(policy: Node) -> dict[str, str]:
    """Policy identifiers with the kind of their value."""
    kinds = {}
    for key, node in entries_of(policy, "policy").items():
        value = text_of(node, "value")
        is_number = value is not None and WHOLE_NUMBER.fullmatch(value.text)
        kinds[key] = "whole number" if is_number else "value that is no whole number"
    return kinds


def _ward(node: Node | None) -> WardNames:
    """Zones and fixtures of a ward."""
    fixtures = entries_of(node, "fixtures")
    kinds = {key: kind.text if (kind := text_of(each, "kind")) else "" for key, each in fixtures.items()}
    coded = frozenset(key for key, each in fixtures.items() if text_of(each, "code") or text_of(each, "name"))
    return WardNames(dict.fromkeys(entries_of(node, "zones"), "zone"), kinds, coded)


def _phases(node: Node | None) -> frozenset[str]:
    """The phases of a protocol."""
    return frozenset(name.text for phase in items_of(node, "phases") if (name := text_of(phase, "phase")))


def _techniques(node: Node | None) -> Iterator[str]:
    """The hand techniques of a protocol, as other protocols name them."""
    protocol = text_of(node, "protocol")
    for phase in items_of(node, "phases"):
        name, layout = text_of(phase, "phase"), text_of(phase, "layout")
        if protocol and name and layout and layout.text == "hand-technique":
            yield f"{protocol.text}/{name.text}"


def step_names(protocol: Node) -> Names:
    """The steps of a protocol, and which of them repeat another one."""
    return {
        name.text: "step that repeats another one" if text_of(step, "again") else "step"
        for step in steps_of(protocol)
        if (name := text_of(step, "step"))
    }


def judge(
    text: Text | None, names: Names | None, what: str, kinds: Collection[str] = ()
) -> Iterator[Problem]:
    """The problem with a reference: unknown, or of another kind than ``kinds``.

    ``what`` is how the message calls what was wanted, such as ``a zone of the ward``. Nothing is said
    about a text that is no identifier, since the schema reports it.
    """
    if text is None or names is None or IDENTIFIER.fullmatch(text.text) is None:
        return
    kind = names.get(text.text)
    fitting = [name for name, each in names.items() if not kinds or each in kinds]
    if kind is None:
        yield faults.UNKNOWN_REFERENCE.problem(
            f"'{shorten(text.text)}' is not {what}.",
            text.place,
            hint=suggest(text.text, fitting, "There are"),
        )
    elif kinds and kind and kind not in kinds:
        article = "an" if kind[0] in "aeiou" else "a"
        yield faults.WRONG_REFERENCE.problem(
            f"'{text.text}' is {article} {kind}; {what} was wanted.",
            text.place,
            hint=f"There are: {', '.join(fitting)}." if fitting else "Declare one, or name another thing.",
        )


def judge_each(
    texts: Collection[Text], names: Names | None, what: str, kinds: Collection[str] = ()
) -> Iterator[Problem]:
    """The problems with the references of a list."""
    for text in texts:
        yield from judge(text, names, what, kinds)


def judge_tag(text: Text | None, locales: Names | None) -> Iterator[Problem]:
    """A locale that library.yaml does not declare."""
    if text is None or locales is None or text.text in locales or not is_well_formed(text.text):
        return
    if any(two_letter_form(tag) == text.text for tag in locales):
        return  # there the language is written in three letters, which is told once
    yield faults.UNKNOWN_REFERENCE.problem(
        f"'{text.text}' is not a locale of library.yaml.",
        text.place,
        hint=f"Declare it under 'locales', or use another. {suggest(text.text, locales, 'There are')}",
    )
