"""Files in a content folder that look as if they counted, and that nothing reads."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from signage.ground.place import Place
from signage.load.content_files import (
    KNOWN_FILES,
    MISTAKEN_SIGN_OFFS,
    READ_FOLDERS,
    SIGN_OFFS,
    SIGNED_CONTENT,
)
from signage.load.file_text import shown_path
from signage.load.suggestion import nearest

_COUNTING = frozenset({".yaml", ".yml", ".json", ".jsonl", ".toml", ".csv", ".po"})
"""Endings of files that people write for programmes; notes, pictures and backups are left alone."""

_FONTS = frozenset({".ttf", ".otf"})
_MOST = 50
"""Findings; a folder with more of them is no content folder."""

READ = (
    f"Read are {', '.join(sorted(KNOWN_FILES))} and the YAML files directly in wards/, protocols/ and "
    "scenes/; fonts/ holds fonts."
)


_SIGN_OFFS_STAND_IN = (
    f"Sign-offs stand in {SIGN_OFFS}, and 'signage approve' alone writes them. "
    "Move this file out of the content."
)


@dataclass(frozen=True, slots=True)
class UnreadFile:
    """A file that has no effect, what is wrong with it and what to do."""

    place: Place
    message: str
    hint: str


def unread_files(content: Path) -> tuple[UnreadFile, ...]:
    """The files without effect in a content folder, by path; hidden ones, backups and notes are left out.

    YAML files at the top with an unknown name are not among them: reading the content refuses those.
    """
    found: list[UnreadFile] = []
    for path in _entries(content):
        if path.name in {SIGN_OFFS, SIGNED_CONTENT}:
            continue
        if path.is_dir():
            found += _in_folder(path)
        elif path.name == MISTAKEN_SIGN_OFFS:
            found.append(_unread(path, "is not read", _SIGN_OFFS_STAND_IN))
        elif _counts(path) and path.suffix.lower() not in {".yaml", ".yml"}:
            found.append(_unread(path, "is not read", READ))
        elif path.suffix.lower() in _FONTS:
            found.append(_unread(path, "is not read", "Move the font into content/fonts/."))
    return tuple(found[:_MOST])


def _in_folder(folder: Path) -> Iterator[UnreadFile]:
    """The files without effect in one folder of the content."""
    if folder.name in READ_FOLDERS:
        reads_yaml = folder.name != "fonts"
        for path in _entries(folder):
            if path.is_dir():
                yield from (_deep(each, folder) for each in _counting_below(path))
            elif _counts(path) and not (reads_yaml and path.suffix.lower() in {".yaml", ".yml"}):
                yield _unread(path, "is not read", READ)
        return
    files = _counting_below(folder)
    if files:
        name = nearest(folder.name, READ_FOLDERS)
        hint = f"Did you mean '{name}/'? {READ}" if name else f"Move it out of the content. {READ}"
        many = f"{_MOST} or more" if len(files) >= _MOST else str(len(files))
        count = "its file is" if len(files) == 1 else f"its {many} files are"
        yield _unread(folder, f"is not a folder that is read: {count} without effect", hint)


def _deep(path: Path, folder: Path) -> UnreadFile:
    """A file in a folder of a folder."""
    hint = f"Move it into {shown_path(folder)}/ itself, or out of the content."
    return _unread(path, "is not read, since it stands in a folder of a folder", hint)


def _counting_below(folder: Path) -> list[Path]:
    """The files that look as if they counted, in the folder and in all below it; links are not followed."""
    found: list[Path] = []
    waiting = [folder]
    while waiting and len(found) < _MOST:
        for path in _entries(waiting.pop()):
            if path.is_dir() and not path.is_symlink():
                waiting.append(path)
            elif _counts(path):
                found.append(path)
    return sorted(found)


def _counts(path: Path) -> bool:
    return path.suffix.lower() in _COUNTING and not path.is_dir()


def _entries(folder: Path) -> list[Path]:
    """The entries of a folder by name, without hidden ones; none where it cannot be listed."""
    try:
        return sorted(path for path in folder.iterdir() if not path.name.startswith((".", "#")))
    except OSError:
        return []


def _unread(path: Path, message: str, hint: str) -> UnreadFile:
    place = Place(shown_path(path))
    return UnreadFile(place, f"{place}{'/' if path.is_dir() else ''} {message}.", hint)
