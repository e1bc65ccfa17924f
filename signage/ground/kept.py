"""Results of earlier runs, each found by a fingerprint of exactly what it was made from."""

from __future__ import annotations

import hashlib
import json
import os
import stat
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from signage.ground.errors import SignageError
from signage.ground.files import read_ordinary, write_whole

MOST_BYTES = 1_000_000_000
"""What the folder may hold; a library of seven protocols in five languages takes some 60 million."""
LARGEST = 200_000_000
"""Bytes of one result; what is larger was not written by this programme."""

_ENDING = ".kept"
_DIGEST = hashlib.sha256().digest_size
_DAY = 86_400.0
_UNUSED_PART = 3600.0
"""Seconds after which a half-written file has no writer any more."""


@dataclass(frozen=True)
class Kept:
    """A folder of results. None as a folder keeps nothing; ``is_fresh`` finds nothing, but keeps.

    A result is bytes under a key, which is a SHA-256 in hexadecimal. It is written whole or not at all,
    carries a digest of its key and bytes, and counts only while both agree: what a kill, a full disk or
    somebody else left there is as good as absent. Two runs may write the same result, since they write the
    same bytes. No failure of the folder is one of the run.
    """

    folder: Path | None = None
    is_fresh: bool = False

    def find(self, key: str) -> bytes | None:
        """The bytes of a result, or None."""
        if self.folder is None or self.is_fresh:
            return None
        path = self._path(key)
        try:
            written = read_ordinary(path, LARGEST)
            _mark_used(path)
        except OSError:
            return None
        digest, data = written[:_DIGEST], written[_DIGEST:]
        if digest != _digest_of(key, data):
            _remove(path)
            return None
        return data

    def keep(self, key: str, data: bytes) -> None:
        """Keep a result; where the folder takes nothing, it is not kept."""
        if self.folder is None:
            return
        try:
            write_whole(self._path(key), _digest_of(key, data) + data)
        except (OSError, SignageError):
            return

    def find_json(self, key: str) -> Any | None:
        """The value of a result that was kept as JSON, or None."""
        data = self.find(key)
        try:
            return None if data is None else json.loads(data)
        except (ValueError, RecursionError):
            return None

    def keep_json(self, key: str, value: Any) -> None:
        """Keep a value of dictionaries, lists and scalars."""
        if self.folder is not None:
            self.keep(key, json.dumps(value, ensure_ascii=False, separators=(",", ":")).encode())

    def made_once(self, key: str, make: Callable[[], bytes]) -> bytes:
        """What an earlier run made, or what is made now and kept for later ones."""
        found = self.find(key)
        if found is None:
            found = make()
            self.keep(key, found)
        return found

    def trim(self, most_bytes: int = MOST_BYTES) -> int:
        """Remove what was used longest ago until the rest fits; how many results went."""
        if self.folder is None:
            return 0
        files = sorted(self._files(), key=lambda file: file.used)
        size = sum(file.size for file in files)
        removed = 0
        for file in files:
            if size <= most_bytes:
                break
            _remove(file.path)
            size -= file.size
            removed += 1
        return removed

    def _path(self, key: str) -> Path:
        assert self.folder is not None
        return self.folder / key[:2] / f"{key[2:]}{_ENDING}"

    def _files(self) -> Iterator[_File]:
        """The results of the folder; half-written files that nobody writes any more go at once."""
        assert self.folder is not None
        now = time.time()
        for path in self.folder.glob("??/*"):
            try:
                found = path.lstat()
            except OSError:
                continue
            if not stat.S_ISREG(found.st_mode):
                continue
            if path.suffix == _ENDING:
                yield _File(path, found.st_size, found.st_mtime)
            elif path.suffix == ".part" and now - found.st_mtime > _UNUSED_PART:
                _remove(path)


@dataclass(frozen=True, slots=True)
class _File:
    path: Path
    size: int
    used: float


def kept_folder() -> Path | None:
    """Where the results of this user lie: ``$XDG_CACHE_HOME/signage/kept`` or ``~/.cache/signage/kept``.

    None for somebody without a home.
    """
    root = os.environ.get("XDG_CACHE_HOME")
    try:
        base = Path(root) if root else Path.home() / ".cache"
    except RuntimeError:
        return None
    return base / "signage" / "kept"


def open_kept(folder: Path | None, *, is_fresh: bool = False) -> Kept:
    """The results in a folder of this user alone; none are kept where others may write there.

    Somebody who may write there could have a sheet printed that was never checked.
    """
    if folder is None:
        return Kept()
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        found = folder.lstat()
    except OSError:
        return Kept()
    is_folder = stat.S_ISDIR(found.st_mode)
    is_own = not hasattr(os, "getuid") or (found.st_uid == os.getuid() and not found.st_mode & 0o022)
    return Kept(folder, is_fresh) if is_folder and is_own else Kept()


def _mark_used(path: Path) -> None:
    """What was used last is removed last; a day is exact enough for that."""
    if time.time() - path.stat().st_mtime > _DAY:
        os.utime(path)


def _digest_of(key: str, data: bytes) -> bytes:
    return hashlib.sha256(key.encode() + b"\n" + data).digest()


def _remove(path: Path) -> None:
    try:
        path.unlink(missing_ok=True)
    except OSError:
        return
