"""The content and the words of a library as a revision in git holds them, written into a folder.

Objects are read as they are stored: no filter, hook or attribute of the repository runs.
"""

from __future__ import annotations

import os
import shutil
import subprocess
from collections.abc import Generator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from signage.ground.errors import MissingFromMachineError, WrongUsageError
from signage.ground.quotation import quoted
from signage.load.file_text import shown_path

_MOST_BYTES = 512_000_000
"""Of all files together; a library is a hundredth of it. Common practice, no source."""

_LONGEST_SECONDS = 120
_FILES = frozenset({"100644", "100755"})
"""Modes of ordinary files in a tree; links and modules of others are left out."""

_QUIET = {
    "GIT_LITERAL_PATHSPECS": "1",
    "GIT_OPTIONAL_LOCKS": "0",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_NO_LAZY_FETCH": "1",
    "LC_ALL": "C",
}
"""Paths are no patterns, nothing is written, nobody is asked, nothing is fetched."""


@dataclass(frozen=True)
class _Stored:
    """A file of a revision: its path in the folder that was asked for, and its object."""

    path: str
    object: str


@contextmanager
def files_of_revision(revision: str, content: Path, locales: Path) -> Generator[tuple[Path, Path]]:
    """Two folders that hold what ``content`` and ``locales`` held in a revision; gone afterwards.

    Raises WrongUsageError where there is no such revision or it holds no such content, and
    MissingFromMachineError where git is not there.
    """
    git = shutil.which("git")
    if git is None:
        raise MissingFromMachineError(
            f"There is no folder {quoted(revision)}, and this machine has no git to look for a revision of "
            "that name. Name a folder that holds content/ and locales/, or install git."
        )
    repository = _Repository(git, content if content.is_dir() else Path())
    commit = repository.commit(revision)
    with TemporaryDirectory(prefix="signage-") as name:
        folders = Path(name) / "content", Path(name) / "locales"
        for folder, target in zip((content, locales), folders, strict=True):
            repository.write(commit, folder, target)
        if not (folders[0] / "library.yaml").is_file():
            raise WrongUsageError(
                f"The revision {quoted(revision)} has no library in {shown_path(content)}/. Name the folder "
                "where it lies in git with --content, or compare two folders."
            )
        yield folders


class _Repository:
    """The git repository around a folder."""

    def __init__(self, git: str, folder: Path) -> None:
        self._git = git
        self._folder = folder

    def commit(self, revision: str) -> str:
        """The full name of a commit."""
        if not self._ask("rev-parse", "--show-toplevel").stdout:
            told = self._ask("rev-parse", "--show-toplevel").stderr.decode("utf-8", "replace").strip()
            raise WrongUsageError(
                f"There is no folder {quoted(revision)}, and {shown_path(self._folder)}/ lies in no git "
                f"repository that can be read ({told.splitlines()[0] if told else 'git says nothing'}). "
                "Name a folder that holds content/ and locales/."
            )
        found = self._ask(
            "rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}"
        ).stdout
        if not found.strip():
            raise WrongUsageError(
                f"There is no folder and no revision in git {quoted(revision)}. Name a folder that holds "
                "content/ and locales/, or a revision such as HEAD, HEAD~1, a branch or a tag."
            )
        return found.decode("ascii").strip()

    def write(self, commit: str, folder: Path, target: Path) -> None:
        """Write the files that a folder of the working tree has in a commit."""
        top = Path(os.fsdecode(self._ask("rev-parse", "--show-toplevel").stdout.rstrip(b"\n"))).resolve()
        whole = Path(os.path.abspath(folder)).resolve()  # noqa: PTH100 - a folder that is gone has a path too
        if not whole.is_relative_to(top):
            return
        stored = self._list(commit, whole.relative_to(top).as_posix())
        for each, data in zip(stored, self._read(stored), strict=True):
            path = target.joinpath(*each.path.split("/"))
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)

    def _list(self, commit: str, folder: str) -> list[_Stored]:
        start = "" if folder == "." else f"{folder}/"
        listed = self._ask("ls-tree", "-r", "-l", "-z", "--full-tree", commit, "--", folder).stdout
        found, size = [], 0
        for line in listed.split(b"\0"):
            head, _, name = line.partition(b"\t")
            mode, _kind, identity, length = [*head.decode("ascii").split(), "", "", "", ""][:4]
            path = os.fsdecode(name).removeprefix(start)
            if mode not in _FILES:
                continue
            _refuse_other_names(path)
            size += int(length)
            found.append(_Stored(path, identity))
        if size > _MOST_BYTES:
            raise WrongUsageError(
                f"The folder {folder} of this revision holds {size // 1_000_000} MB, more than a library "
                f"does (at most {_MOST_BYTES // 1_000_000} MB)."
            )
        return found

    def _read(self, stored: Sequence[_Stored]) -> list[bytes]:
        """The bytes of objects (git-cat-file, "Batch output": a line with the size, then the bytes)."""
        names = "".join(f"{each.object}\n" for each in stored).encode("ascii")
        answer = self._ask("cat-file", "--batch", given=names).stdout
        found, start = [], 0
        for each in stored:
            end = answer.find(b"\n", start)
            told = answer[start:end].split() if end >= 0 else []
            if len(told) != 3 or told[1] != b"blob":
                raise WrongUsageError(
                    f"git cannot give {quoted(each.path)} of this revision: its history is not whole."
                )
            size = int(told[2])
            found.append(answer[end + 1 : end + 1 + size])
            start = end + 2 + size
        return found

    def _ask(self, *words: str, given: bytes = b"") -> subprocess.CompletedProcess[bytes]:
        command = [self._git, "-c", "core.fsmonitor=false", "-C", os.fspath(self._folder), *words]
        try:
            return subprocess.run(  # noqa: S603 - the words are ours, and names stand behind --end-of-options
                command,
                input=given,
                capture_output=True,
                check=False,
                timeout=_LONGEST_SECONDS,
                env={**os.environ, **_QUIET},
            )
        except (OSError, subprocess.TimeoutExpired, ValueError) as error:
            raise WrongUsageError(f"git could not be asked: {error}.") from error


def _refuse_other_names(path: str) -> None:
    """Refuse what would be written elsewhere than into its folder."""
    parts = path.split("/")
    if any(part in {"", ".", ".."} or set(part) & set("\\:\0") for part in parts) or path.startswith("/"):
        raise WrongUsageError(
            f"This revision holds a file with the name {quoted(path)}, which no folder can hold safely. "
            "Rename it in git."
        )
