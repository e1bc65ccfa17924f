"""Files are written whole or not at all, and read where they are files."""

import errno
import os
import tempfile
from pathlib import Path

from signage.ground.errors import WrongUsageError


def write_whole(path: Path, data: bytes, *, is_durable: bool = False) -> None:
    """Write the file beside its place and move it there in one step; keeps the old one on failure.

    ``is_durable``: return only when the disk has it, so that not even a loss of power takes it back.

    Raises WrongUsageError where the place holds a link, a folder, a device or anything else that is no
    ordinary file: moving a file there would put it in the place of that thing. OSError, where the system
    refuses, names the file that was to be written.
    """
    if path.is_symlink() or (path.exists() and not path.is_file()):
        what = "a link" if path.is_symlink() else "a folder" if path.is_dir() else "no ordinary file"
        raise WrongUsageError(f"'{path}' is {what}, and nothing was written. Name a new file or another one.")
    if not path.parent.is_dir():
        path.parent.mkdir(parents=True, exist_ok=True)
    try:
        _write_beside(path, data, is_durable=is_durable)
    except OSError as error:
        raise OSError(error.errno, error.strerror or str(error), str(path)) from error


def write_changed(path: Path, data: bytes) -> bool:
    """Write the file whole unless it holds these bytes already; whether it was written.

    A file that nobody changed keeps its time, so that what copies files by their times copies it once.
    """
    try:
        if path.stat().st_size == len(data) and read_ordinary(path) == data and not path.is_symlink():
            return False
    except OSError:
        pass
    write_whole(path, data)
    return True


def read_ordinary(path: Path, most: int = -1) -> bytes:
    """The bytes of a file, at most ``most`` of them. A pipe or a device would keep the reader for ever.

    Raises OSError for these as for a folder.
    """
    if path.exists() and not path.is_file():
        raise OSError(errno.EINVAL, "it is no ordinary file", str(path))
    with path.open("rb") as stream:
        return stream.read(most)


def _write_beside(path: Path, data: bytes, *, is_durable: bool) -> None:
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name[:40]}.", suffix=".part")
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
            if is_durable:
                stream.flush()
                os.fsync(stream.fileno())
        Path(temporary).chmod(0o644)
        Path(temporary).replace(path)
        if is_durable:
            _sync_folder(path.parent)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise


def _sync_folder(folder: Path) -> None:
    """Make the new name of a file last; systems that cannot open a folder keep names by themselves."""
    try:
        handle = os.open(folder, os.O_RDONLY)
    except OSError:
        return
    try:
        os.fsync(handle)
    except OSError:
        pass
    finally:
        os.close(handle)
