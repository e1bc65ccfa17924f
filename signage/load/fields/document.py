"""The field reference as a document in Markdown."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from signage.load.fields.reference import FILE_KINDS, FieldRow, FileKind, Part, parts_of
from signage.load.files.policy import (
    AGENT_POLICIES,
    AGENTS,
    CHOICE_POLICIES,
    NUMBER_POLICIES,
    YES_NO_POLICIES,
)
from signage.load.placeholders import FILLED_BY
from signage.load.step_grammar import HYGIENE_PARTS, VERBS

_HEAD = """\
# The fields of the content files

Made by `signage fields` from what the programme reads; do not edit it by hand. `signage fields --schema DIR`
writes the same as JSON schemas, with which an editor completes keys and marks mistakes while you write.

Texts for people need no quotes unless they hold `: ` or ` #`. A list is written `[one, two]`, a mapping
`{key: value}`, or both as indented lines. Unknown keys are refused, so a slip is never ignored.
An identifier is made of small letters, digits and single hyphens, such as `outer-gloves`; it is not printed.
"""

_FOOT = """\
## Other files

`content/scenes/*.yaml` are pictures of your own; `docs/pictures.md` tells how they are drawn.
`content/fonts/` holds fonts for scripts that the programme has none for.
`content/approvals.jsonl` and `content/approved/` are sign-offs and what was signed:
`signage approve` and `signage withdraw` alone write them.
Notes, pictures and backups beside these files are left alone;
what else looks as if it counted is reported by `signage check` (CN-9).
"""


def field_document() -> str:
    """Every file, key, kind, allowed word, example and meaning; ends in a line break."""
    blocks = [_HEAD]
    for file in FILE_KINDS:
        blocks += _file_blocks(file)
    return "\n".join([*blocks, _FOOT])


def _file_blocks(file: FileKind) -> Iterator[str]:
    yield f"## `{file.path}`\n\n{file.about}\n"
    for part in parts_of(file):
        if part.way:
            yield f"### {title_of(part)}\n\n{part.about}\n"
        if file.name == "protocol" and part.way[-1:] == ("do",):
            yield "Where a step has one movement only, these keys stand in the step itself.\n"
        yield _table(("Key", "What stands there", "Needed", "Example", "Meaning"), map(_cells, part.rows))
    if file.name == "policy":
        yield "### Known decisions\n"
        yield _table(("Identifier", "Value"), policy_values())
    if file.name == "protocol":
        yield "### Verbs of `do` and the keys that go with them\n"
        yield "`by` and `on` go with every verb.\n"
        yield _table(("Verb", "Needs", "May have"), verb_keys())
        yield f"### Movements of hand hygiene (`part`)\n\n{_code(HYGIENE_PARTS)}\n"
        yield "### Placeholders in the texts of steps\n"
        yield "Each language fills them with its own digits, units and names.\n"
        yield _table(("Placeholder", "Filled by"), placeholder_sources())


def title_of(part: Part) -> str:
    """Where a mapping stands in its file, such as ``phases`` › ``steps``."""
    return "Each of " + " › ".join(f"`{key}`" for key in part.way)


def _cells(row: FieldRow) -> tuple[str, ...]:
    return (
        f"`{row.key}`",
        what_stands(row),
        "yes" if row.is_needed else f"no; else `{row.default}`" if row.default else "no",
        f"`{row.example}`" if row.example else "",
        row.meaning,
    )


def what_stands(row: FieldRow) -> str:
    """The kind of a value with its bounds, or the words to choose from."""
    if row.words:
        one = "" if row.kind == "word" else f"{row.kind}: "
        return f"{one}{_code(row.words)}"
    is_plain = not row.form or row.form == row.kind or "identifier" in row.kind
    return row.kind if is_plain else f"{row.kind} ({row.form})"


def policy_values() -> Iterator[tuple[str, str]]:
    """Each known decision with what its value is."""
    yield from ((f"`{key}`", "yes or no") for key in YES_NO_POLICIES)
    yield from ((f"`{key}`", "whole number") for key in NUMBER_POLICIES)
    yield from ((f"`{key}`", f"list of {_code(AGENTS)}") for key in AGENT_POLICIES)
    yield from ((f"`{key}`", _code(words)) for key, words in CHOICE_POLICIES.items())


def verb_keys() -> Iterator[tuple[str, str, str]]:
    """Each verb with the keys that it needs and those that it may have."""
    for verb, keys in VERBS.items():
        needed = [f"`{key}`" for key in keys.needed]
        needed += [" or ".join(f"`{key}`" for key in keys.either)] if keys.either else []
        yield f"`{verb}`", ", ".join(needed), _code(keys.possible)


def placeholder_sources() -> Iterator[tuple[str, str]]:
    """Each placeholder with what gives it its value."""
    yield from ((f"`{{{name}}}`", words) for name, (_key, words) in FILLED_BY.items())


def _code(words: Sequence[str]) -> str:
    return ", ".join(f"`{word}`" for word in words)


def _table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    lines = [heads, ["---"] * len(heads), *rows]
    shown = [[cell.replace("|", "\\|") for cell in line] for line in lines]
    return "\n".join(f"| {' | '.join(line)} |" for line in shown) + "\n"
