"""Which files a content folder has to hold, which it may hold, and which ought not to be there."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from signage.ground.place import Place
from signage.ground.problem import Problem, Reading
from signage.load import faults
from signage.load.file_text import shown_path
from signage.load.suggestion import nearest

_TERMS = "terms.yaml"
_WAIVERS = "waivers.yaml"
_PEOPLE = "people.yaml"
KNOWN_FILES = ("library.yaml", "kit.yaml", "policy.yaml", _TERMS, _WAIVERS, _PEOPLE)
READ_FOLDERS = ("wards", "protocols", "scenes", "fonts")
SIGN_OFFS = "approvals.jsonl"
"""The file of sign-offs, which commands alone write."""

SIGNED_CONTENT = "approved"
"""The folder of what was signed, which commands alone write."""

MISTAKEN_SIGN_OFFS = "approvals.yaml"
"""A file that people take for that of sign-offs; that it has no effect is found by a check."""


@dataclass(frozen=True, slots=True)
class ContentFiles:
    """The paths of a content folder; wards, protocols and scenes in the order of their names."""

    library: Path
    kit: Path
    policy: Path
    terms: Path | None
    wards: tuple[Path, ...]
    protocols: tuple[Path, ...]
    scenes: tuple[Path, ...] = ()
    waivers: Path | None = None
    people: Path | None = None


def find_files(content: Path) -> Reading[ContentFiles | None]:
    """The files to read; None where the folder itself is not there. Nothing is opened."""
    entries = yield from _list_folder(content)
    if entries is None:
        return None
    for path in entries:
        if path.suffix.lower() in {".yaml", ".yml"} and path.name not in (*KNOWN_FILES, MISTAKEN_SIGN_OFFS):
            yield _unexpected(path, "is not a file that is read", nearest(path.stem, _stems()))
    wards = yield from _files_of(content / "wards", "ward")
    protocols = yield from _files_of(content / "protocols", "protocol")
    scenes: tuple[Path, ...] = ()
    if content / "scenes" in entries:
        scenes = yield from _files_of(content / "scenes", "scene", may_be_empty=True)
    return ContentFiles(
        content / "library.yaml",
        content / "kit.yaml",
        content / "policy.yaml",
        terms=content / _TERMS if content / _TERMS in entries else None,
        wards=wards,
        protocols=protocols,
        scenes=scenes,
        waivers=content / _WAIVERS if content / _WAIVERS in entries else None,
        people=content / _PEOPLE if content / _PEOPLE in entries else None,
    )


def _stems() -> list[str]:
    """The known names without suffix."""
    return [name.removesuffix(".yaml") for name in KNOWN_FILES]


def _list_folder(folder: Path) -> Reading[list[Path] | None]:
    """The entries of a folder by name, without hidden ones; None where it cannot be listed."""
    place = Place(shown_path(folder))
    try:
        return sorted(path for path in folder.iterdir() if not path.name.startswith("."))
    except NotADirectoryError:
        message = f"{place} is a file; a folder was wanted."
    except FileNotFoundError:
        message = f"The folder {place} is missing."
    except (OSError, ValueError) as error:
        message = f"The folder {place} could not be read: {getattr(error, 'strerror', None) or error}."
    hint = (
        "Name the folder that holds library.yaml; 'signage start DIR' writes a small library to begin from."
    )
    yield faults.UNREADABLE_FILE.problem(message, place, hint=hint)
    return None


def _files_of(folder: Path, what: str, *, may_be_empty: bool = False) -> Reading[tuple[Path, ...]]:
    """The YAML files of a folder, which has to hold at least one unless it may be empty."""
    entries = yield from _list_folder(folder)
    if entries is None:
        return ()
    found = [path for path in entries if path.suffix == ".yaml"]
    for path in entries:
        if path.suffix != ".yaml" and path.suffix.lower() in {".yaml", ".yml"}:
            yield _unexpected(path, f"is not read as a {what}", path.stem)
    if not found and not may_be_empty:
        place = Place(shown_path(folder))
        yield faults.UNREADABLE_FILE.problem(
            f"The folder {place} holds no {what}.", place, hint=f"Write one {what} a file."
        )
    return tuple(found)


def _unexpected(path: Path, message: str, stem: str | None) -> Problem:
    """A YAML file that would be passed over."""
    place = Place(shown_path(path))
    hint = f"Did you mean '{stem}.yaml'?" if stem else ""
    return faults.UNEXPECTED_FILE.problem(f"{place} {message}.", place, hint=hint)
