"""Files that the programme made in a folder: named by a list there, and taken away only by that list."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path, PurePosixPath


def is_inside(name: str) -> bool:
    """Whether a path of a list stays below the folder of the list; a list may have been changed by others."""
    path = PurePosixPath(name)
    return bool(name) and not path.is_absolute() and ".." not in path.parts and "\\" not in name


def made_file(folder: Path, name: str) -> Path | None:
    """The regular file of that name below the folder; None for a link, or where it leads out or is none."""
    path = folder / name
    if not is_inside(name) or not path.is_file() or path.is_symlink():
        return None
    return path if folder.resolve() in path.resolve().parents else None


def take_away(folder: Path, names: Iterable[str]) -> list[str]:
    """Remove the files and the folders that are empty then; returns the names of the files that went."""
    removed = []
    for name in names:
        path = made_file(folder, name)
        if path is None:
            continue
        path.unlink()
        removed.append(name)
        for parent in path.parents:
            if parent == folder or any(parent.iterdir()):
                break
            parent.rmdir()
    return removed
