"""The file of sign-offs and the remembered head on disk; records are added whole, one process at a time."""

from __future__ import annotations

import json
from collections.abc import Callable
from contextlib import AbstractContextManager
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from signage.control.approvals import (
    MOST_BYTES,
    Head,
    Ledger,
    LedgerFault,
    held_against,
    read_ledger,
    with_record,
    written,
)
from signage.control.records import Record
from signage.control.register.store import find_register, register_path
from signage.ground.errors import RefusedError, SignageError
from signage.ground.file_lock import locked
from signage.ground.files import read_ordinary, write_whole
from signage.ground.place import Place
from signage.load.content_files import SIGN_OFFS
from signage.load.file_text import shown_path

SEEN = "approvals-seen.json"
_LOCK = ".approvals.lock"


class HeadMemory(Protocol):
    """Where the last head that was seen is kept, apart from the file itself."""

    def head(self) -> Head | None:
        """The last head seen; None where nobody has seen any."""

    def knows(self, head: Head) -> bool:
        """Whether this is the last one seen, wherever it can be kept."""

    def remember(self, head: Head) -> None:
        """Keep a head as the last one seen."""


@dataclass(frozen=True)
class HeadFile:
    """A head kept in a file of the library's folder, beside its content."""

    path: Path

    def head(self) -> Head | None:
        """The last head seen; None where there is no file, or none that can be read."""
        try:
            value = json.loads(read_ordinary(self.path, 1000))
            return Head(int(value["n"]), str(value["hash"]))
        except (OSError, ValueError, KeyError, TypeError):
            return None

    def knows(self, head: Head) -> bool:
        """Whether this is the last one seen."""
        return self.head() == head

    def remember(self, head: Head) -> None:
        """Keep a head as the last one seen."""
        data = json.dumps({"n": head.n, "hash": head.hash}, sort_keys=True) + "\n"
        write_whole(self.path, data.encode(), is_durable=True)


@dataclass(frozen=True)
class HeadInRegister:
    """The head as the register of printed copies saw it; a library without a register keeps none there."""

    path: Path

    def head(self) -> Head | None:
        """The last head seen; None where there is no register, or none that can be read."""
        try:
            register = find_register(self.path)
        except SignageError:
            return None
        if register is None:
            return None
        with register:
            seen = register.read_seen()
        return None if seen is None else Head(*seen)

    def knows(self, head: Head) -> bool:
        """Whether this is the last one seen; there is nowhere to keep it without a register."""
        return not self.path.exists() or self.head() == head

    def remember(self, head: Head) -> None:
        """Keep a head as the last one seen, where there is a register."""
        register = find_register(self.path)
        if register is not None:
            with register:
                register.remember_seen(head.n, head.hash)


@dataclass(frozen=True)
class HeadInTwoPlaces:
    """A head in two places: who cuts the file of sign-offs must cut both, for the later one counts."""

    places: tuple[HeadMemory, HeadMemory]

    def head(self) -> Head | None:
        """The later of the two."""
        seen = [head for place in self.places if (head := place.head()) is not None]
        return max(seen, key=lambda head: head.n, default=None)

    def knows(self, head: Head) -> bool:
        """Whether both know it."""
        return all(place.knows(head) for place in self.places)

    def remember(self, head: Head) -> None:
        """Keep a head in both."""
        for place in self.places:
            place.remember(head)


@dataclass(frozen=True)
class ApprovalsFile:
    """The sign-offs of a library. ``memory`` keeps its head."""

    path: Path
    memory: HeadMemory

    def whole(self) -> Ledger:
        """The records as the file holds them, whoever has seen its end."""
        shown = shown_path(self.path)
        try:
            data = read_ordinary(self.path, MOST_BYTES + 1)
        except FileNotFoundError:
            return Ledger()
        except OSError as error:
            message = f"The file could not be read: {error.strerror or error}."
            return Ledger(fault=LedgerFault(message, Place(shown)))
        if len(data) > MOST_BYTES:
            return Ledger(fault=LedgerFault("The file is larger than any file of sign-offs.", Place(shown)))
        return read_ledger(data, shown)

    def read(self) -> Ledger:
        """The records, none where the file is damaged or its end is not the one that was seen."""
        return held_against(self.whole(), self.memory.head(), shown_path(self.path))

    def remember(self, ledger: Ledger) -> None:
        """Keep the head of a sound ledger that is not known; where nobody may write, the old one stays."""
        if ledger.fault is not None or not ledger.records or self.memory.knows(ledger.head):
            return
        seen = self.memory.head()
        if seen is None or seen.n <= ledger.head.n:
            try:
                self.memory.remember(ledger.head)
            except (OSError, SignageError):
                return

    def append(self, make: Callable[[Ledger], Record]) -> Record:
        """Add the record that ``make`` gives for the file as it is now; what is returned is on the disk.

        Raises RefusedError where the file is damaged: nothing is added to what cannot be trusted.
        """
        with self._locked():
            ledger = self.read()
            if ledger.fault is not None:
                raise RefusedError(str(ledger.fault))
            longer, record = with_record(ledger, make(ledger))
            write_whole(self.path, written(longer.records), is_durable=True)
            self.memory.remember(longer.head)
        return record

    def confirm(self, expected: Head) -> None:
        """Take the end of the file, as a role has seen it, for the last one.

        Raises RefusedError where the file is damaged, or has another end than the one that was shown.
        """
        with self._locked():
            ledger = self.whole()
            if ledger.fault is not None:
                raise RefusedError(str(ledger.fault))
            if ledger.head != expected:
                raise RefusedError("The file has changed since it was shown. Run the command again.")
            self.memory.remember(expected)

    def _locked(self) -> AbstractContextManager[None]:
        return locked(self.path.with_name(_LOCK))


def approvals_file(content: Path, memory: HeadMemory | None = None) -> ApprovalsFile:
    """The sign-offs of a content folder.

    Their head is kept in the folder around it, in a file and in the register, unless told otherwise.
    """
    places = HeadFile(content.parent / SEEN), HeadInRegister(register_path(content))
    return ApprovalsFile(content / SIGN_OFFS, memory or HeadInTwoPlaces(places))
