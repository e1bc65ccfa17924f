"""Writes a catalogue as a PO file: the same entries always give the same bytes."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from signage.words.catalogue import Catalogue, CatalogueKind, Entry
from signage.words.plural_forms import plural_forms

MARK_LEGEND = (
    "",
    " Marks that count, one a comment line above an entry:",
    "   translated: ROLE-OR-ID 2026-11-25",
    "   checked: ROLE-OR-ID 2026-11-26  (counts once 'signage words update' has sealed it; an edit ends it)",
    "   origin: machine",
    "   same as source",
)
"""What the head of every catalogue tells translators about marks."""

_DATES = frozenset({"pot-creation-date", "po-revision-date"})
_ESCAPED = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t", "\r": "\\r"}
_TO_ESCAPE = re.compile(r'[\\"\n\t\r]')
_PLURAL_FORMS = re.compile(r"nplurals\s*=\s*\d+\s*;\s*plural\s*=\s*[n\d\s()?:!=<>&|%+*/-]+;?")


def complete_header(kind: CatalogueKind, tag: str | None, present: Mapping[str, str]) -> dict[str, str]:
    """The header fields in their order, without dates; ``tag`` is None for a template.

    Fields of the file that the programme does not know stay. A sound Plural-Forms of the file stays as
    well: two orders of the Arabic forms are in use, and only the file knows which one it was written for.
    """
    known = {name.lower(): value for name, value in present.items()}
    header = {"Project-Id-Version": f"signage {kind}"}
    if tag is not None:
        header["Language"] = tag
    header["MIME-Version"] = "1.0"
    header["Content-Type"] = "text/plain; charset=UTF-8"
    header["Content-Transfer-Encoding"] = "8bit"
    if tag is not None:
        own = known.get("plural-forms", "")
        plural = own if _PLURAL_FORMS.fullmatch(own) else plural_forms(tag)
        if plural is not None:
            header["Plural-Forms"] = plural
    written = {name.lower() for name in header} | _DATES | {"plural-forms", "language"}
    header.update({name: value for name, value in present.items() if name.lower() not in written})
    return header


def write_catalogue(catalogue: Catalogue) -> bytes:
    """The bytes of the PO file: header, entries, obsolete entries, each string on one line."""
    blocks = [_header_lines(catalogue)]
    blocks.extend(list(_entry_lines(entry, "")) for entry in catalogue.entries)
    blocks.extend(list(_entry_lines(entry, "#~ ")) for entry in catalogue.obsolete)
    if catalogue.closing_comments:
        blocks.append([_comment(line) for line in catalogue.closing_comments])
    return ("\n\n".join("\n".join(block) for block in blocks) + "\n").encode("utf-8")


def _header_lines(catalogue: Catalogue) -> list[str]:
    lines = [_comment(comment) for comment in catalogue.header_comments]
    lines.extend(('msgid ""', 'msgstr ""'))
    lines.extend(_quoted(f"{name}: {value}\n") for name, value in catalogue.header.items())
    return lines


def _entry_lines(entry: Entry, prefix: str) -> Iterator[str]:
    yield from (_comment(comment) for comment in entry.comments)
    yield from (f"#. {note}" if note else "#." for note in entry.notes)
    yield from (f"#: {reference}" for reference in entry.references)
    if entry.flags:
        yield f"#, {', '.join(entry.flags)}"
    if entry.previous is not None:
        yield f"{'#~' if prefix else '#'}| msgid {_quoted(entry.previous)}"
    yield f"{prefix}msgctxt {_quoted(entry.context)}"
    yield f"{prefix}msgid {_quoted(entry.source)}"
    yield f"{prefix}msgstr {_quoted(entry.translation)}"


def _comment(text: str) -> str:
    return f"#{text}".rstrip()


def _quoted(text: str) -> str:
    escaped = _TO_ESCAPE.sub(lambda match: _ESCAPED[match.group()], text)
    return f'"{escaped}"'
