"""Files are written whole or not at all."""

import os
import tempfile
from pathlib import Path

from signage.ground.errors import WrongUsageError


def write_whole(path: Path, data: bytes) -> None:
    """Write the file beside its place and move it there in one step; keeps the old one on failure.

    Raises WrongUsageError where the place holds a link, a folder, a device or anything else that is no
    ordinary file: moving a file there would put it in the place of that thing.
    """
    if path.is_symlink() or (path.exists() and not path.is_file()):
        what = "a link" if path.is_symlink() else "a folder" if path.is_dir() else "no ordinary file"
        raise WrongUsageError(f"'{path}' is {what}, and nothing was written. Name a new file or another one.")
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=".part")
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(data)
        Path(temporary).chmod(0o644)
        Path(temporary).replace(path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise
