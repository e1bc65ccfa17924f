"""One process at a time: a lock that the system itself takes away when its process ends."""

from __future__ import annotations

import importlib
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO, Any

from signage.ground.errors import RefusedError

_PAUSE = 0.02
LONGEST_WAIT = 30.0
"""Seconds; what is done under a lock takes a fraction of one. Common practice, no source."""


@contextmanager
def locked(path: Path, longest_wait: float = LONGEST_WAIT) -> Iterator[None]:
    """Hold the lock that the file ``path`` stands for; the file stays, and its presence means nothing.

    Raises RefusedError where another process holds it for longer than ``longest_wait`` seconds.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("a+b") as stream:
        _wait_for(stream, path, longest_wait)
        try:
            yield
        finally:
            _release(stream)


def _wait_for(stream: IO[bytes], path: Path, longest_wait: float) -> None:
    end = time.monotonic() + longest_wait
    while not _taken(stream):
        if time.monotonic() > end:
            raise RefusedError(
                f"Another run of signage holds {path} for {longest_wait:.0f} s, and nothing was written. "
                "Wait until it has ended, then run the command again."
            )
        time.sleep(_PAUSE)


def _taken(stream: IO[bytes]) -> bool:
    """Whether the lock is ours now."""
    try:
        posix: Any = importlib.import_module("fcntl")
    except ImportError:
        return _taken_on_windows(stream)
    try:
        posix.flock(stream, posix.LOCK_EX | posix.LOCK_NB)
    except OSError:
        return False
    return True


def _taken_on_windows(stream: IO[bytes]) -> bool:
    windows: Any = importlib.import_module("msvcrt")
    stream.seek(0)
    try:
        windows.locking(stream.fileno(), windows.LK_NBLCK, 1)
    except OSError:
        return False
    return True


def _release(stream: IO[bytes]) -> None:
    """Windows keeps a lock until the file is closed unless it is given back."""
    try:
        windows: Any = importlib.import_module("msvcrt")
    except ImportError:
        return  # elsewhere closing the file gives it back
    stream.seek(0)
    windows.locking(stream.fileno(), windows.LK_UNLCK, 1)
