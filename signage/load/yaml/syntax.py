"""Errors of the YAML parsers in our own words, with line and column counted from 1."""

from __future__ import annotations

import re
from dataclasses import dataclass

import yaml

from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.load import faults


@dataclass(frozen=True, slots=True)
class _Translation:
    """What a parser says (a pattern) and what it means to an author. ``at_start``: blame where it began."""

    pattern: str
    message: str
    hint: str
    at_start: bool = False


_TRANSLATIONS = (
    _Translation(
        "mapping values are not allowed",
        "A second colon stands in this line, or the line is indented too far",
        "Put a text that holds ': ' in quotes; begin keys of one group in one column.",
    ),
    _Translation(
        "unexpected end of stream|unexpected document indicator|unexpected end of document",
        "A quoted text begins here and is never closed",
        "Close the text with the same quote it began with.",
        at_start=True,
    ),
    _Translation(
        "expected ',' or '[]}]'",
        "The list or mapping in brackets that begins here is not closed, or a comma is missing in it",
        "Separate entries with commas and close the bracket.",
        at_start=True,
    ),
    _Translation(
        "expected the node content|expected node content",
        "A value or a closing bracket was wanted here",
        "Close every bracket, and put a text that begins with a special sign in quotes.",
    ),
    _Translation(
        "expected '-' indicator|block sequence entries are not|while parsing a block (collection|sequence)",
        "Entries of a list and other lines are mixed here, or a dash is not in the column of the others",
        "Begin all entries of a list with '- ' in one column.",
    ),
    _Translation(
        "expected key|block end|while parsing a block mapping",
        "This line does not line up with the lines above it",
        "Begin all keys of one group in one column.",
    ),
    _Translation(
        "expected ':'",
        "A key was wanted here, and no colon follows it",
        "Write 'key: value' with a space after the colon; put longer texts in quotes.",
        at_start=True,
    ),
    _Translation(
        "cannot start any token",
        "A text may not begin with this sign unless it stands in quotes",
        "Put the text in quotes.",
    ),
    _Translation(
        "escape (character|code)|hexdecimal number|hexadecimal",
        "After a backslash in a text in double quotes stands a sign that has no meaning there",
        "Write two backslashes, or use single quotes.",
    ),
    _Translation(
        "undefined alias|alphabetic or numeric|anchor|alias",
        "A text that begins with & or * stands without quotes",
        "Put the text in quotes; anchors and aliases are not used in content files.",
    ),
    _Translation(
        "nesting depth", "Brackets are nested too deeply", "Content needs no more than a few levels."
    ),
    _Translation(
        "tag|directive|version|incompatible",
        "A YAML tag or directive (! or %) stands here",
        "Put the text in quotes; tags and directives are not used in content files.",
    ),
    _Translation(
        "block scalar|indentation indicator|chomping|comment or a line break",
        "After | or > only a line break may follow",
        "Begin the text on the next line, indented.",
    ),
)

_UNKNOWN = _Translation("", "This line does not follow the rules of YAML", faults.NOT_YAML.cure)


_WORDS_AFTER_END = _Translation(
    "",
    "Words follow after the end of a text in quotes or of brackets",
    "Put the whole text in double quotes, also where it begins with a brace such as {time}.",
)


def syntax_problem(error: Exception, path: str, text: str) -> Problem:
    """The problem for an error of either parser, the C one or the Python one, in this text of a file."""
    said, wanted, began = "", None, None
    if isinstance(error, yaml.MarkedYAMLError):
        said = f"{error.problem or ''} {error.context or ''}"
        wanted, began = error.problem_mark, error.context_mark
    translation = next((t for t in _TRANSLATIONS if re.search(t.pattern, said)), _UNKNOWN)
    if wanted is not None and "line up" in translation.message and _stands_inside(text, wanted):
        translation = _WORDS_AFTER_END
    mark = (began or wanted) if translation.at_start else (wanted or began)
    place = Place(path, mark.line + 1, mark.column + 1) if mark is not None else Place(path)
    return faults.NOT_YAML.problem(f"{translation.message}.", place, hint=translation.hint)


def _stands_inside(text: str, mark: yaml.error.Mark | yaml._yaml.Mark) -> bool:
    """Whether something stands before the mark in its line."""
    lines = re.split(r"\r\n|\r|\n", text)
    return mark.line < len(lines) and bool(lines[mark.line][: mark.column].strip())
