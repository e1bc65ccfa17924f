"""The lines of a PO file: decoding, kinds of lines and quoted strings, with every fault in its place."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.text.forbidden import find_forbidden
from signage.words.rules import RULE_OF

LARGEST_FILE = 5_000_000
"""Bytes; a catalogue of a thousand texts has a tenth of it."""

MOST_PROBLEMS = 100
"""Problems that are told of one file; more help nobody to mend it."""

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")
_LOOKED_AT = 200
"""Bytes at the beginning of a file in which every other one is 0 where it is UTF-16 without a mark."""

_MOST_SPOILED = 5
"""Lines that are not UTF-8, beyond which they have one cause: the file was saved in another encoding."""

_WHOLE_STRING = re.compile(r'"([^"\\]*)"')
"""A quoted string without escapes, as most are."""
_CONTROL = re.compile(r"[\x00-\x08\x0a-\x1f\x7f-\x9f]")
"""Characters of the general category Cc but for the tab."""
_KEYWORD = re.compile(r"(msgctxt|msgid_plural|msgid|msgstr)(\[\d+\])?(?=[\s\"]|$)\s*")
_ESCAPES = {"n": "\n", "t": "\t", "r": "\r", '"': '"', "\\": "\\"}


@dataclass(frozen=True, slots=True)
class PoLine:
    """One line by its kind.

    ``kind``: blank, comment, note, reference, flags, a key word (msgctxt, msgid, msgid_plural, msgstr)
    or continuation. ``text`` is the comment or the string without quotes and escapes.
    """

    kind: str
    text: str
    place: Place
    is_obsolete: bool = False
    is_previous: bool = False


class LineReader:
    """Splits the bytes of a PO file into lines and gathers the faults of single lines.

    ``problems`` are the first ``MOST_PROBLEMS``, ``untold`` the number of those after them; ``is_readable``
    turns False where the file as a whole cannot be read.
    """

    def __init__(self, data: bytes, path: str) -> None:
        self._data = data
        self._path = path
        self.problems: list[Problem] = []
        self.untold = 0
        self.is_readable = True

    def lines(self) -> Iterator[PoLine]:
        """The lines that could be understood, in order; faults go to ``problems``."""
        data = self._data
        if len(data) > LARGEST_FILE:
            self.fault("PO-1", Place(self._path), f"the file has {len(data)} bytes; at most 5 MB are read")
            self.is_readable = False
            return
        if _is_utf_16(data):
            self.fault("PO-2", Place(self._path, 1, 1), "the file is UTF-16; UTF-8 was wanted")
            self.is_readable = False
            return
        spoiled = _lines_not_utf_8(data)
        if len(spoiled) > _MOST_SPOILED:
            message = (
                f"{len(spoiled)} lines are not UTF-8, first this one; the whole file has another encoding"
            )
            self.fault("PO-2", Place(self._path, spoiled[0]), message)
            self.is_readable = False
            return
        if data.startswith(_BYTE_ORDER_MARK):
            self.fault("PO-3", Place(self._path, 1, 1), "the file begins with a byte order mark")
            data = data[len(_BYTE_ORDER_MARK) :]
        for number, raw in enumerate(data.split(b"\n"), start=1):
            text = self._decoded(raw.removesuffix(b"\r"), number)
            self._look_for_hidden(text, number)
            line = self._line(text, number)
            if line is not None:
                yield line

    def fault(self, code: str, place: Place, message: str) -> None:
        """Tell a fault of a line, or of what lines make together."""
        if len(self.problems) < MOST_PROBLEMS:
            self.problems.append(RULE_OF[code].problem(message, place))
        else:
            self.untold += 1

    def _decoded(self, raw: bytes, number: int) -> str:
        try:
            return raw.decode("utf-8")
        except UnicodeDecodeError as error:
            column = len(raw[: error.start].decode("utf-8")) + 1
            found = f"0x{raw[error.start]:02X}"
            self.fault("PO-2", Place(self._path, number, column), f"the byte {found} is not UTF-8 here")
            return raw.decode("utf-8", errors="replace")

    def _look_for_hidden(self, text: str, number: int) -> None:
        if text.isascii() and text.isprintable():
            return
        for found in find_forbidden(text):
            place = Place(self._path, number, found.index + 1)
            self.fault("PO-12", place, f"the character {found.name} stands here")
        for control in _CONTROL.finditer(text):
            place = Place(self._path, number, control.start() + 1)
            self.fault("PO-13", place, f"the control character U+{ord(control.group()):04X} stands here")

    def _line(self, text: str, number: int) -> PoLine | None:
        is_obsolete = is_previous = False
        rest = text
        if rest.startswith("#~"):
            is_obsolete = True
            rest = rest[2:].lstrip(" \t")
        if rest.startswith("#|") or (is_obsolete and rest.startswith("|")):
            is_previous = True
            rest = rest.lstrip("#").removeprefix("|")
        stripped = rest.lstrip(" \t")
        column = len(text) - len(stripped) + 1
        place = Place(self._path, number, column)
        if not stripped:
            return None if is_obsolete or is_previous else PoLine("blank", "", place)
        if stripped.startswith("#"):
            return self._comment(stripped, place, is_obsolete)
        return self._text_line(stripped, place, is_obsolete, is_previous)

    def _comment(self, text: str, place: Place, is_obsolete: bool) -> PoLine:
        kinds = {"#.": "note", "#:": "reference", "#,": "flags"}
        kind = kinds.get(text[:2])
        if kind is not None:
            return PoLine(kind, text[2:].strip(), place, is_obsolete)
        return PoLine("comment", text[1:].rstrip(), place, is_obsolete)

    def _text_line(self, text: str, place: Place, is_obsolete: bool, is_previous: bool) -> PoLine | None:
        match = _KEYWORD.match(text)
        if match is not None:
            kind, quoted = match.group(1), text[match.end() :]
            if match.group(2) is not None:
                self.fault("PO-11", place, f"{match.group(0).strip()} stands here; one msgstr was expected")
                return None
        elif text.startswith('"'):
            kind, quoted = "continuation", text
        else:
            word = text.split(" ", maxsplit=1)[0][:40]
            self.fault("PO-8", place, f"the line begins with '{word}'")
            return None
        start = place.column + len(text) - len(quoted)
        string = self._string(quoted.rstrip(" \t"), Place(place.path, place.line, start))
        return PoLine(kind, string, place, is_obsolete, is_previous)

    def _string(self, quoted: str, place: Place) -> str:
        """The text of a quoted string; what can be read of it where it is broken."""
        whole = _WHOLE_STRING.fullmatch(quoted)
        if whole is not None:
            return whole.group(1)
        if not quoted.startswith('"'):
            self.fault("PO-6", place, "a text in quotation marks was expected here")
            return ""
        characters: list[str] = []
        i = 1
        while i < len(quoted):
            character = quoted[i]
            at = Place(place.path, place.line, place.column + i)
            if character == '"':
                if i + 1 < len(quoted):
                    self.fault("PO-6", at, "the text goes on after the closing quotation mark")
                return "".join(characters)
            if character == "\\":
                i += 1
                escaped = quoted[i : i + 1]
                if escaped not in _ESCAPES:
                    self.fault("PO-7", at, f"'\\{escaped}' is not a known escape")
                character = _ESCAPES.get(escaped, escaped)
            characters.append(character)
            i += 1
        end = Place(place.path, place.line, place.column + len(quoted))
        self.fault("PO-6", end, "the closing quotation mark is missing")
        return "".join(characters)


def _is_utf_16(data: bytes) -> bool:
    beginning = data[:_LOOKED_AT]
    half = len(beginning) // 2
    zeros = max(beginning[::2].count(0), beginning[1::2].count(0))
    return data.startswith(_UTF_16) or (half > 1 and zeros * 2 > half)


def _lines_not_utf_8(data: bytes) -> list[int]:
    """The numbers of the lines that cannot be decoded; none are looked for in a file that is whole."""
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return [number for number, raw in enumerate(data.split(b"\n"), start=1) if not _is_utf_8(raw)]
    return []


def _is_utf_8(raw: bytes) -> bool:
    try:
        raw.decode("utf-8")
    except UnicodeDecodeError:
        return False
    return True
