"""Reads a PO file strictly: what it cannot keep it reports, with its line, and skips nothing unsaid."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType

from signage.ground.counting import counted
from signage.ground.files import read_ordinary
from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.words.catalogue import Catalogue, Entry
from signage.words.po.lines import LARGEST_FILE, MOST_PROBLEMS, LineReader, PoLine
from signage.words.rules import RULE_OF

_ORDER = ("msgctxt", "msgid", "msgid_plural", "msgstr")
_CHARSET = re.compile(r"charset\s*=\s*([^\s;]+)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class ReadCatalogue:
    """A catalogue as far as it could be read, and what is wrong with its file.

    ``is_readable`` is False where nothing of the file could be read.
    """

    catalogue: Catalogue
    problems: tuple[Problem, ...]
    is_readable: bool = True


@dataclass(slots=True)
class _Draft:
    """An entry while its lines are read; ``place`` is that of its first key word."""

    place: Place
    comments: list[str] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)
    references: list[str] = field(default_factory=list)
    flags: list[str] = field(default_factory=list)
    texts: dict[str, str] = field(default_factory=dict)
    previous: dict[str, str] = field(default_factory=dict)
    is_obsolete: bool = False
    repeated: list[str] = field(default_factory=list)

    @property
    def is_header(self) -> bool:
        return not self.is_obsolete and "msgctxt" not in self.texts and self.texts.get("msgid") == ""

    @property
    def has_content(self) -> bool:
        return bool(self.texts or self.comments or self.notes or self.previous)

    def entry(self) -> Entry:
        return Entry(
            context=self.texts.get("msgctxt", ""),
            source=self.texts.get("msgid", ""),
            translation=self.texts.get("msgstr", ""),
            comments=tuple(self.comments),
            notes=tuple(self.notes),
            references=tuple(self.references),
            flags=tuple(self.flags),
            previous=self.previous.get("msgid"),
            place=self.place,
        )


def read_catalogue_file(path: Path, tag: str, shown_as: str = "") -> ReadCatalogue:
    """The catalogue in a file; a file that cannot be opened gives an empty one and a problem."""
    name = shown_as or path.as_posix()
    try:
        data = read_ordinary(path, LARGEST_FILE + 1)
    except OSError as error:
        message = f"the file cannot be opened: {error.strerror or 'unknown reason'}"
        problem = RULE_OF["PO-1"].problem(message, Place(name), locale=tag)
        return ReadCatalogue(Catalogue(), (problem,), is_readable=False)
    return read_catalogue(data, name, tag)


@lru_cache(maxsize=16)
def read_catalogue(data: bytes, path: str, tag: str) -> ReadCatalogue:
    """The catalogue in the bytes of a PO file; ``path`` is the name that problems show. Never raises.

    Those of the last eight languages are kept, since reading words and counting them ask for the same bytes.
    """
    reader = LineReader(data, path)
    drafts = list(_drafts(reader))
    found = list(reader.problems)
    closing: tuple[str, ...] = ()
    if drafts and not drafts[-1].texts and not drafts[-1].previous:
        closing = tuple(drafts.pop().comments)
    header = next((draft for draft in drafts if draft.is_header), None)
    if reader.is_readable:
        found.extend(_header_problems(header, path, tag))
    bodies = [draft for draft in drafts if draft is not header]
    for draft in bodies:
        found.extend(_gaps(draft))
    live = tuple(draft.entry() for draft in bodies if not draft.is_obsolete)
    found.extend(_repetitions(live))
    catalogue = Catalogue(
        entries=live,
        header=MappingProxyType(_header_fields(header)),
        header_comments=tuple(header.comments) if header else (),
        obsolete=tuple(draft.entry() for draft in bodies if draft.is_obsolete),
        closing_comments=closing,
    )
    told = _first_of(sorted(found, key=lambda problem: problem.place), reader.untold, path)
    problems = tuple(_with_locale(problem, tag) for problem in told)
    return ReadCatalogue(catalogue, problems, reader.is_readable)


def _first_of(problems: Sequence[Problem], untold: int, path: str) -> Sequence[Problem]:
    """As many problems as help, and one that counts the rest."""
    rest = untold + max(0, len(problems) - MOST_PROBLEMS)
    if not rest:
        return problems
    told = problems[:MOST_PROBLEMS]
    faults = counted(rest, "more fault stands", "more faults stand")
    return [*told, RULE_OF["PO-15"].problem(f"{faults} in the file", Place(path))]


def _with_locale(problem: Problem, tag: str) -> Problem:
    return RULE_OF[problem.code].problem(problem.message, problem.place, locale=tag)


def _drafts(reader: LineReader) -> Iterator[_Draft]:
    """Groups lines into entries. A blank line ends an entry only once it has a text."""
    draft = _Draft(Place(""))
    target: dict[str, str] | None = None
    key = ""
    continued: list[str] = []
    for line in reader.lines():
        if continued and line.kind != "continuation":
            assert target is not None
            target[key] = "".join((target[key], *continued))
            continued = []
        if line.kind == "blank":
            if draft.texts:
                yield draft
                draft = _Draft(Place(""))
            target = None
            continue
        if _begins_entry(line, draft):
            yield draft
            draft = _Draft(Place(""))
        if line.kind == "continuation":
            if target is None:
                reader.fault("PO-8", line.place, "this text belongs to no key word")
            else:
                continued.append(line.text)
        elif line.kind in _ORDER:
            target, key = (draft.previous if line.is_previous else draft.texts), line.kind
            _open_text(draft, line)
        else:
            target = None
            _add_remark(draft, line)
    if continued:
        assert target is not None
        target[key] = "".join((target[key], *continued))
    if draft.has_content:
        yield draft


def _begins_entry(line: PoLine, draft: _Draft) -> bool:
    """Whether a line belongs to the next entry: a remark or an early key word after a text."""
    if not draft.texts or line.kind == "continuation":
        return False
    is_keyword = line.kind in _ORDER and not line.is_previous
    if not is_keyword:
        return True
    if line.is_obsolete != draft.is_obsolete:
        return True
    return "msgstr" in draft.texts and line.kind != "msgstr"


def _open_text(draft: _Draft, line: PoLine) -> None:
    if line.is_previous:
        draft.previous[line.kind] = line.text
        draft.place = draft.place if draft.place.path else Place(line.place.path, line.place.line)
        return
    if not draft.texts:
        draft.place = Place(line.place.path, line.place.line)
        draft.is_obsolete = line.is_obsolete
    if line.kind in draft.texts:
        draft.repeated.append(line.kind)
    draft.texts[line.kind] = line.text


def _add_remark(draft: _Draft, line: PoLine) -> None:
    if line.kind == "note":
        draft.notes.append(line.text)
    elif line.kind == "reference":
        draft.references.append(line.text)
    elif line.kind == "flags":
        draft.flags.extend(flag.strip() for flag in line.text.split(",") if flag.strip())
    else:
        draft.comments.append(line.text)


def _gaps(draft: _Draft) -> Iterator[Problem]:
    """What an entry lacks or has twice."""
    if "msgid_plural" in draft.texts:
        yield RULE_OF["PO-11"].problem("msgid_plural stands here; one text was expected", draft.place)
        return
    lacking = [keyword for keyword in ("msgctxt", "msgid", "msgstr") if keyword not in draft.texts]
    if draft.is_header:
        yield RULE_OF["PO-9"].problem("a second header stands here", draft.place)
    elif lacking:
        yield RULE_OF["PO-9"].problem(f"the entry has no {' and no '.join(lacking)}", draft.place)
    elif not draft.texts["msgid"]:
        yield RULE_OF["PO-9"].problem("the msgid of the entry is empty", draft.place)
    for keyword in draft.repeated:
        yield RULE_OF["PO-9"].problem(f"the entry has {keyword} twice", draft.place)


def _repetitions(entries: tuple[Entry, ...]) -> Iterator[Problem]:
    first: dict[str, Entry] = {}
    for entry in entries:
        if not entry.context:
            continue
        earlier = first.setdefault(entry.context, entry)
        if earlier is not entry:
            message = f"'{entry.context}' has a first entry in line {earlier.place.line} already"
            yield RULE_OF["PO-10"].problem(message, entry.place)


def _header_fields(header: _Draft | None) -> dict[str, str]:
    fields: dict[str, str] = {}
    text = header.texts.get("msgstr", "") if header else ""
    for line in text.split("\n"):
        name, colon, value = line.partition(":")
        if colon and name.strip():
            fields[name.strip()] = value.strip()
    return fields


def _header_problems(header: _Draft | None, path: str, tag: str) -> Iterator[Problem]:
    if header is None:
        yield RULE_OF["PO-5"].problem("the file has no header", Place(path, 1))
        return
    fields = {name.lower(): value for name, value in _header_fields(header).items()}
    charset = _CHARSET.search(fields.get("content-type", ""))
    if charset is None:
        yield RULE_OF["PO-5"].problem("the header names no character set", header.place)
    elif charset.group(1).lower() not in {"utf-8", "utf8"}:
        message = f"the header names the character set {charset.group(1)}; UTF-8 was expected"
        yield RULE_OF["PO-4"].problem(message, header.place)
    language = fields.get("language", "")
    if language and language.replace("_", "-").lower() != tag.lower():
        message = f"the header names the language {language}; the folder is that of {tag}"
        yield RULE_OF["PO-14"].problem(message, header.place)
