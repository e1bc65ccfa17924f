"""What may stand where, as the lists that the explanation of a fault ends with."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from signage.load import faults
from signage.load.content_files import KNOWN_FILES, READ_FOLDERS
from signage.load.fields.document import placeholder_sources, policy_values, verb_keys, what_stands
from signage.load.fields.reference import FILE_KINDS, FieldRow, parts_of
from signage.load.step_grammar import HYGIENE_PARTS, VERBS

Lists = tuple[tuple[str, tuple[str, ...]], ...]
"""Titles with their lines."""


def lists_for(code: str) -> Lists:
    """The whole lists of keys, words and forms that a fault of this code is about; empty for most codes."""
    make = _LISTS.get(code)
    return make() if make is not None else ()


def _by_mapping(line: Callable[[FieldRow], str | None]) -> Lists:
    """A line for each key of each mapping of each file, where there is one to tell."""
    found = []
    for file in FILE_KINDS:
        for part in parts_of(file):
            lines = tuple(told for row in part.rows if (told := line(row)) is not None)
            if lines:
                found.append((" › ".join((file.path, *part.way)), lines))
    return tuple(found)


def _keys() -> Lists:
    keys = _by_mapping(lambda row: row.key)
    return tuple((title, (", ".join(lines),)) for title, lines in keys)


def _needed() -> Lists:
    keys = _by_mapping(lambda row: row.key if row.is_needed else None)
    return tuple((title, (", ".join(lines),)) for title, lines in keys)


def _words() -> Lists:
    words = _by_mapping(lambda row: f"{row.key}: {', '.join(row.words)}" if row.words else None)
    decisions = tuple(_plain(f"{name}: {value}") for name, value in policy_values() if value.count("`") > 2)
    return (*words, ("content/policy.yaml › values", decisions))


def _kinds() -> Lists:
    decisions = tuple(_plain(f"{name}: {value}") for name, value in policy_values())
    kinds = _by_mapping(lambda row: _plain(f"{row.key}: {what_stands(row)}"))
    return (*kinds, ("content/policy.yaml › values", decisions))


def _forms() -> Lists:
    wanted = ("identifier", "code", "label", "language tag", "web address", "code of a rule")
    forms = {row.kind: row.form for file in FILE_KINDS for part in parts_of(file) for row in part.rows}
    return (("Forms", tuple(f"{kind}: {forms[kind]}" for kind in wanted)),)


def _verbs() -> Lists:
    return (("Verbs and their keys; by and on go with every verb", tuple(_verb_lines())),)


def _verb_lines() -> Iterator[str]:
    for verb, needed, possible in verb_keys():
        parts = (("needs", needed), ("may have", possible))
        told = "; ".join(f"{word} {keys}" for word, keys in parts if keys)
        yield _plain(f"{verb}: {told or 'no further key'}")


def _references() -> Lists:
    return (
        ("A verb (do)", (", ".join(VERBS),)),
        ("A movement of hand hygiene (part)", (", ".join(HYGIENE_PARTS),)),
    )


def _placeholders() -> Lists:
    return (("Placeholders", tuple(_plain(f"{name}: {source}") for name, source in placeholder_sources())),)


def _files() -> Lists:
    folders = ", ".join(f"{name}/" for name in READ_FOLDERS)
    return (("What is read in content/", (", ".join(sorted(KNOWN_FILES)), folders)),)


def _plain(text: str) -> str:
    """Without the signs of Markdown."""
    return text.replace("`", "")


_LISTS: dict[str, Callable[[], Lists]] = {
    faults.UNKNOWN_KEY.code: _keys,
    faults.MISSING_KEY.code: _needed,
    faults.WRONG_KIND.code: _kinds,
    faults.UNKNOWN_WORD.code: _words,
    faults.MALFORMED_NAME.code: _forms,
    faults.UNKNOWN_REFERENCE.code: _references,
    faults.MISFIT_KEY.code: _verbs,
    faults.PLACEHOLDER.code: _placeholders,
    faults.UNEXPECTED_FILE.code: _files,
    "CN-9": _files,
}
