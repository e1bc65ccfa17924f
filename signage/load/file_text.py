"""The bytes of a content file as text: size, encoding and characters are judged before YAML is."""

from __future__ import annotations

import os
import re
import stat
from pathlib import Path

from signage.ground.place import Place
from signage.ground.problem import Reading
from signage.load import faults

LARGEST_FILE = 2_000_000
"""Bytes; a protocol of a hundred steps has some 40 000."""

_LINE_END = re.compile(r"\r\n|\r|\n")
_FORBIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\ud800-\udfff\ufeff\ufffe\uffff]"
)
"""C0 and C1 controls, line and paragraph separator, direction overrides, surrogates, byte order mark."""

_TAB_INDENT = re.compile(r"^ *\t[ \t]*(?=[^ \t\r\n])", re.MULTILINE)
_MOST_CHARACTER_PROBLEMS = 10
_NOT_BINARY = 0.01


def shown_path(path: Path) -> str:
    """The path as messages print it; bytes that are no text in its name are replaced."""
    return os.fsencode(path.as_posix()).decode("utf-8", "replace")


def read_bytes(path: Path) -> Reading[bytes | None]:
    """The bytes of a regular file of at most ``LARGEST_FILE`` bytes; None where it cannot be read."""
    place, hint = Place(shown_path(path)), ""
    try:
        state = path.stat()
        if stat.S_ISREG(state.st_mode) and state.st_size <= LARGEST_FILE:
            with path.open("rb") as stream:
                return stream.read(LARGEST_FILE + 1)[:LARGEST_FILE]
        if stat.S_ISDIR(state.st_mode):
            message = f"{place} is a folder; a file was wanted."
            hint = "Rename the folder and put the file there."
        elif not stat.S_ISREG(state.st_mode):
            message = f"{place} is not an ordinary file."
        else:
            size = f"{state.st_size / 1e6:.1f} MB"
            yield faults.TOO_LARGE.problem(f"{place} has {size}; content files have at most 2 MB.", place)
            return None
    except FileNotFoundError:
        message = f"{place} is missing."
        hint = "Put the file there; 'signage start DIR' writes a small library to begin from."
    except PermissionError:
        message, hint = f"{place} may not be read by this user.", "Give yourself the right to read it."
    except (OSError, ValueError) as error:
        message = f"{place} could not be read: {getattr(error, 'strerror', None) or str(error)}."
    yield faults.UNREADABLE_FILE.problem(message, place, hint=hint)
    return None


def decode(data: bytes, path: str) -> Reading[str | None]:
    """The text of UTF-8 bytes without byte order mark; None where the bytes are not UTF-8."""
    if data.startswith(b"\xef\xbb\xbf"):
        yield faults.BYTE_ORDER_MARK.problem(
            f"{path} begins with a byte order mark (BOM).", Place(path, 1, 1)
        )
        data = data[3:]
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        before = data[: error.start]
        line = len(re.findall(rb"\r\n|\r|\n", before)) + 1
        start = max(before.rfind(b"\n"), before.rfind(b"\r")) + 1
        column = len(before[start:].decode("utf-8", "replace")) + 1
        found = f"the byte 0x{data[error.start]:02X} at offset {error.start}"
        guess = ""
        if data[:2] in {b"\xff\xfe", b"\xfe\xff"}:
            guess = "; the file looks like UTF-16"
        yield faults.NOT_UTF_8.problem(
            f"{path} is not UTF-8 text: {found} (line {line}) belongs to no character{guess}.",
            Place(path, line, column),
        )
        return None


def forbidden_in(text: str) -> tuple[tuple[int, str], ...]:
    """Index and character of what no text may hold: controls, line separators, direction overrides."""
    return tuple((match.start(), match.group()) for match in _FORBIDDEN.finditer(text))


def describe(character: str) -> str:
    """The character by its number and, where it has one, by what it does."""
    number = f"U+{ord(character):04X}"
    if "\u202a" <= character <= "\u202e":
        return f"the direction override {number}"
    if character == "\ufeff":
        return f"the invisible byte order mark {number}"
    return f"the control character {number}"


def clean(text: str, path: str) -> Reading[str | None]:
    """The text with forbidden characters replaced, so that the rest can be read; None for a binary file."""
    found = forbidden_in(text)
    further = len(found) - _MOST_CHARACTER_PROBLEMS
    for number, (index, character) in enumerate(found[:_MOST_CHARACTER_PROBLEMS], start=1):
        more = f"; {further} more follow" if further > 0 and number == _MOST_CHARACTER_PROBLEMS else ""
        yield faults.FORBIDDEN_CHARACTER.problem(
            f"Here stands {describe(character)}{more}.", place_of(text, index, path)
        )
    if len(found) > _MOST_CHARACTER_PROBLEMS and len(found) > _NOT_BINARY * len(text):
        return None
    return _FORBIDDEN.sub("\ufffd", text)


def has_tab_indent(text: str, path: str) -> Reading[bool]:
    """Whether a line is indented with a tab; the first such line is reported with the number of others."""
    found = list(_TAB_INDENT.finditer(text))
    if found:
        tab = text.index("\t", found[0].start())
        more = f", as are {len(found) - 1} further lines" if len(found) > 1 else ""
        yield faults.TAB_INDENT.problem(f"This line is indented with a tab{more}.", place_of(text, tab, path))
    return bool(found)


def place_of(text: str, index: int, path: str) -> Place:
    """Line and column of a character of the text."""
    line, start = 1, 0
    for match in _LINE_END.finditer(text, 0, index):
        line, start = line + 1, match.end()
    return Place(path, line, index - start + 1)
