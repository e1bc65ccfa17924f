"""The folders of translations beside those that the library names."""

from __future__ import annotations

from pathlib import Path

from signage.model.library import Library


def unlisted_folders(library: Library, locales: Path) -> tuple[Path, ...]:
    """The locale folders whose language library.yaml does not name, by name."""
    try:
        folders = sorted(path for path in locales.iterdir() if (path / "LC_MESSAGES").is_dir())
    except OSError:
        return ()
    return tuple(path for path in folders if path.name not in library.locales)
