"""YAML to nodes: every value and every key with file, line and column, every scalar still a text."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import yaml

from signage.ground.place import Place
from signage.ground.problem import Problem, Reading
from signage.load import faults
from signage.load.file_text import (
    clean,
    decode,
    describe,
    forbidden_in,
    has_tab_indent,
    place_of,
    read_bytes,
    shown_path,
)
from signage.load.suggestion import shorten
from signage.load.yaml.nodes import Node, Refused, Sequence, Table, Text
from signage.load.yaml.syntax import syntax_problem

DEEPEST = 20
"""Levels of nesting; an action inside a step of a protocol stands at the seventh."""

_PARSER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
"""The parser written in C where this installation has it."""


def read_yaml(path: Path) -> Reading[Node | None]:
    """The content of a YAML file; None where nothing could be read.

    Problems do not raise, so that a report can hold those of all files.
    """
    data = yield from read_bytes(path)
    if data is None:
        return None
    return (yield from parse_yaml(data, shown_path(path)))


def parse_yaml(data: bytes, path: str, parser: type | None = None) -> Reading[Node | None]:
    """The same for bytes; ``path`` is the name that places carry, ``parser`` a loader class of PyYAML."""
    text = yield from decode(data, path)
    if text is None:
        return None
    cleaned = yield from clean(text, path)
    if cleaned is None or (yield from has_tab_indent(cleaned, path)):
        return None
    composer = _Composer(path)
    root = composer.compose(cleaned, parser or _PARSER)
    yield from composer.problems
    if root is None and not composer.has_failed:
        yield faults.EMPTY_FILE.problem(
            f"{path} holds nothing; content was wanted.", place_of(cleaned, 0, path)
        )
    return root


@dataclass(slots=True)
class _OpenTable:
    """A mapping whose end was not met yet. ``key`` is the key that waits for its value."""

    place: Place
    values: dict[str, Node] = field(default_factory=dict)
    key_places: dict[str, Place] = field(default_factory=dict)
    key: Node | None = None
    is_in_braces: bool = False


@dataclass(slots=True)
class _OpenSequence:
    """A list whose end was not met yet."""

    place: Place
    items: list[Node] = field(default_factory=list)


@dataclass(slots=True)
class _Composer:
    """Builds nodes from parser events without recursion, so that no nesting can exhaust the stack."""

    path: str
    problems: list[Problem] = field(default_factory=list)
    has_failed: bool = False
    open: list[_OpenTable | _OpenSequence] = field(default_factory=list)
    root: Node | None = None

    def compose(self, text: str, parser: type) -> Node | None:
        """The node of the only document; None after a syntax error or for an empty file."""
        documents = 0
        for event in self._events(text, parser):
            if isinstance(event, yaml.DocumentStartEvent):
                documents += 1
                if documents > 1:
                    self._refuse(event, "A second document begins here ('---')", "Keep one document a file.")
                    break
            elif isinstance(event, yaml.NodeEvent):
                self._read(event)
            elif isinstance(event, yaml.CollectionEndEvent):
                self._close()
            if len(self.open) > DEEPEST:
                self._refuse(
                    event, "Values are nested too deeply", "Content needs no more than a few levels."
                )
                self.has_failed = True
            if self.has_failed:
                return None
        return None if self.has_failed else self.root

    def _events(self, text: str, parser: type) -> Iterator[yaml.Event]:
        """The events of a parser up to the first syntax error, which is reported."""
        try:
            yield from yaml.parse(text, Loader=parser)
        except (yaml.YAMLError, ValueError, OverflowError, RecursionError) as error:
            self.problems.append(syntax_problem(error, self.path, text))
            self.has_failed = True

    def _place(self, event: yaml.Event) -> Place:
        """Where an event begins."""
        mark = event.start_mark
        return Place(self.path, mark.line + 1, mark.column + 1) if mark is not None else Place(self.path)

    def _refuse(self, event: yaml.Event, message: str, hint: str) -> None:
        """Report a feature of YAML that content files do without."""
        self.problems.append(faults.REFUSED_YAML.problem(f"{message}.", self._place(event), hint=hint))

    def _read(self, event: yaml.NodeEvent) -> None:
        """Take up a scalar, an alias or the beginning of a list or mapping."""
        place = self._place(event)
        if isinstance(event, yaml.AliasEvent):
            self._refuse(
                event, f"The alias *{shorten(event.anchor or '')} stands here", "Write the value out in full."
            )
            self._add(Refused(place))
            return
        if event.anchor is not None:
            self._refuse(
                event,
                f"The anchor &{shorten(event.anchor)} stands here",
                "Delete it, and write the value out where it is wanted again.",
            )
        tag = getattr(event, "tag", None)
        if tag is not None:
            self._refuse(
                event,
                f"The tag {shorten(tag)} stands here",
                "Delete the tag, or put a text that begins with ! in quotes.",
            )
        if isinstance(event, yaml.ScalarEvent):
            self._add(self._text(event, place))
        elif isinstance(event, yaml.SequenceStartEvent):
            self.open.append(_OpenSequence(place))
        else:
            self.open.append(_OpenTable(place, is_in_braces=bool(getattr(event, "flow_style", False))))

    def _text(self, event: yaml.ScalarEvent, place: Place) -> Node:
        """A scalar as text; a character written as an escape is judged like the character itself."""
        found = forbidden_in(event.value)
        if found:
            message = f"The text holds {describe(found[0][1])}, written as an escape."
            self.problems.append(faults.FORBIDDEN_CHARACTER.problem(message, place))
            return Refused(place)
        return Text(event.value, place, is_plain=event.style is None or event.style == "")

    def _close(self) -> None:
        """End the innermost list or mapping and put it where it belongs."""
        ended = self.open.pop()
        if isinstance(ended, _OpenSequence):
            self._add(Sequence(tuple(ended.items), ended.place))
        else:
            self._add(Table(ended.values, ended.place, ended.key_places, ended.is_in_braces))

    def _add(self, node: Node) -> None:
        """Put a whole node into the innermost open list or mapping, or make it the root."""
        if not self.open:
            self.root = node
            return
        holder = self.open[-1]
        if isinstance(holder, _OpenSequence):
            holder.items.append(node)
        elif holder.key is None:
            holder.key = node
        else:
            self._add_value(holder, holder.key, node)
            holder.key = None

    def _add_value(self, holder: _OpenTable, key: Node, value: Node) -> None:
        """Store a key with its value; a repeated key or one that is no text is reported and left out."""
        if isinstance(key, Refused):
            return
        if not isinstance(key, Text):
            self.problems.append(
                faults.REFUSED_YAML.problem(
                    "A list or mapping stands where a key was wanted.",
                    key.place,
                    hint="Write a text as the key.",
                )
            )
        elif key.text in holder.values:
            first = holder.key_places[key.text]
            message = f"The key '{shorten(key.text)}' stands twice; the first is in line {first.line}."
            self.problems.append(faults.REPEATED_KEY.problem(message, key.place))
        else:
            holder.values[key.text] = value
            holder.key_places[key.text] = key.place
