"""``register.db``: opened, asked and added to. Whatever was acknowledged survives a crash."""

from __future__ import annotations

import sqlite3
import time
from collections.abc import Generator, Iterable, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Self

from signage.control.register.schema import VERSION, migrate, version_of
from signage.ground.edition import pinned_time
from signage.ground.errors import MissingFromMachineError, WrongUsageError
from signage.load.file_text import shown_path
from signage.model.copies import NOWHERE_YET, Copy, CopyState, Event, EventKind, Spot, states_of
from signage.model.copy_number import copy_number, running_number

REGISTER_NAME = "register.db"

_WAIT_SECONDS = 30.0
"""How long one process waits for another that is writing."""

_OLDEST_SQLITE = (3, 37, 0)
"""The first with STRICT tables (SQLite, "STRICT Tables")."""

_COPY = "number, sheet, subject, locale, code, hash, mark, printed_on, by_role"
_EVENT = "id, copy, kind, on_day, by_role, note, ward, slot, learner"


@dataclass(frozen=True, slots=True)
class NewCopy:
    """A copy that is about to be printed: it has no number yet."""

    letters: str
    sheet: str
    subject: str
    locale: str
    code: str
    hash: str
    mark: str


@dataclass(frozen=True, slots=True)
class NewEvent:
    """Something that has happened to a copy and is to be added."""

    number: str
    kind: EventKind
    on: date
    by_role: str
    note: str = ""
    spot: Spot = NOWHERE_YET


@dataclass(frozen=True, slots=True)
class Report:
    """A closed recall, an audit round or an incident slip, as JSON."""

    id: int
    kind: str
    subject: str
    on: date
    by_role: str
    content: str


class Register:
    """The open register of one library; see ``open_register``."""

    def __init__(self, connection: sqlite3.Connection, path: Path) -> None:
        self._connection = connection
        self._path = path

    @contextmanager
    def changing(self) -> Generator[None]:
        """All that is added inside is added together or not at all, and no other process comes between."""
        with _told(self._path):
            self._connection.execute("BEGIN IMMEDIATE")
            try:
                yield
            except BaseException:
                self._connection.execute("ROLLBACK")
                raise
            self._connection.execute("COMMIT")

    def states(self) -> tuple[CopyState, ...]:
        """Every copy in the order of its number, with its state."""
        with _told(self._path):
            return states_of(self.copies(), self.events())

    def copies(self) -> tuple[Copy, ...]:
        """Every copy that was printed, in the order of running numbers."""
        rows = self._connection.execute(f"SELECT {_COPY} FROM copy ORDER BY running")  # noqa: S608 - constants
        return tuple(
            Copy(number, sheet, subject, locale, code, whole, mark, date.fromisoformat(day), role)
            for number, sheet, subject, locale, code, whole, mark, day, role in rows
        )

    def events(self) -> tuple[Event, ...]:
        """Everything that has happened, in the order in which it was added."""
        rows = self._connection.execute(f"SELECT {_EVENT} FROM event ORDER BY id")  # noqa: S608 - constants
        return tuple(
            Event(row_id, number, EventKind(kind), date.fromisoformat(day), role, note, Spot(*spot))
            for row_id, number, kind, day, role, note, *spot in rows
        )

    def add_copies(self, new: Iterable[NewCopy], on: date, by_role: str) -> tuple[Copy, ...]:
        """Give numbers to copies that are about to be printed."""
        added = []
        with self.changing():
            running = self._connection.execute("SELECT coalesce(max(running), 0) FROM copy").fetchone()[0]
            for each in new:
                number = None
                while number is None:
                    running += 1
                    number = copy_number(each.letters, running)
                copy = Copy(
                    number,
                    each.sheet,
                    each.subject,
                    each.locale,
                    each.code,
                    each.hash,
                    each.mark,
                    on,
                    by_role,
                )
                self._add_copy(copy)
                added.append(copy)
        return tuple(added)

    def _add_copy(self, copy: Copy) -> None:
        values = (
            copy.number,
            running_number(copy.number),
            copy.sheet,
            copy.subject,
            copy.locale,
            copy.code,
            copy.hash,
            copy.mark,
            copy.printed_on.isoformat(),
            copy.by_role,
            _now(),
        )
        self._connection.execute(
            "INSERT INTO copy (number, running, sheet, subject, locale, code, hash, mark, printed_on,"
            " by_role, at_unix) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            values,
        )

    def add_events(self, events: Sequence[NewEvent]) -> None:
        """Add events inside ``changing``, which the caller opens before looking at states."""
        for event in events:
            self._connection.execute(
                "INSERT INTO event (copy, kind, on_day, by_role, note, ward, slot, learner, at_unix)"
                " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                (
                    event.number,
                    event.kind.value,
                    event.on.isoformat(),
                    event.by_role,
                    event.note,
                    event.spot.ward,
                    event.spot.slot,
                    event.spot.learner,
                    _now(),
                ),
            )

    def reports(self, kind: str) -> tuple[Report, ...]:
        """What was reported of a kind, in the order in which it was added."""
        with _told(self._path):
            rows = self._connection.execute(
                "SELECT id, kind, subject, on_day, by_role, content FROM report WHERE kind = ? ORDER BY id",
                (kind,),
            )
            return tuple(
                Report(row_id, of_kind, subject, date.fromisoformat(day), role, content)
                for row_id, of_kind, subject, day, role, content in rows
            )

    def add_report(self, kind: str, subject: str, on: date, by_role: str, content: str) -> None:
        """Add a report inside ``changing``."""
        self._connection.execute(
            "INSERT INTO report (kind, subject, on_day, by_role, content, at_unix) VALUES (?, ?, ?, ?, ?, ?)",
            (kind, subject, on.isoformat(), by_role, content, _now()),
        )

    def read_seen(self) -> tuple[int, str] | None:
        """Count and hash of the last sign-off that this register saw; None where it saw none."""
        with _told(self._path):
            row: tuple[int, str] | None = self._connection.execute(
                "SELECT approvals_n, approvals_hash FROM seen ORDER BY id DESC LIMIT 1"
            ).fetchone()
            return row

    def remember_seen(self, approvals_n: int, approvals_hash: str) -> None:
        """Remember the last sign-off, so that a file that was cut is noticed; nothing is added twice."""
        with self.changing():
            if self.read_seen() != (approvals_n, approvals_hash):
                self._connection.execute(
                    "INSERT INTO seen (approvals_n, approvals_hash, at_unix) VALUES (?, ?, ?)",
                    (approvals_n, approvals_hash, _now()),
                )

    def close(self) -> None:
        """Let go of the file."""
        self._connection.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_error: object) -> None:
        self.close()


def register_path(content: Path) -> Path:
    """Where the register of a library lies: beside its content, in the folder of the library."""
    return content.parent / REGISTER_NAME


def find_register(path: Path) -> Register | None:
    """The register where there is one; asking makes none. Raises as ``open_register``."""
    return open_register(path) if path.exists() else None


def open_register(path: Path) -> Register:
    """The register of a library; a new one where there is none yet.

    Rollback journal and full synchronisation (SQLite, "Atomic Commit"): libraries lie on network shares,
    where a write-ahead log fails. Raises WrongUsageError where it cannot be used, and
    MissingFromMachineError where the SQLite of this machine is too old.
    """
    if sqlite3.sqlite_version_info < _OLDEST_SQLITE:
        wanted = ".".join(map(str, _OLDEST_SQLITE))
        raise MissingFromMachineError(
            f"The register needs SQLite {wanted} or newer; Python on this machine has "
            f"{sqlite3.sqlite_version}. Install a newer Python."
        )
    if path.is_dir() or path.is_symlink():
        what = "a folder" if path.is_dir() else "a link"
        raise WrongUsageError(f"'{shown_path(path)}' is {what}; the register must be a file of its own.")
    with _told(path):
        connection = sqlite3.connect(path, timeout=_WAIT_SECONDS, isolation_level=None)
        try:
            _prepare(connection, path)
        except BaseException:
            connection.close()
            raise
    return Register(connection, path)


def _prepare(connection: sqlite3.Connection, path: Path) -> None:
    connection.execute("PRAGMA journal_mode = DELETE")
    connection.execute("PRAGMA synchronous = FULL")
    connection.execute("PRAGMA foreign_keys = ON")
    version = version_of(connection)
    if version > VERSION:
        raise WrongUsageError(
            f"'{shown_path(path)}' was written by a newer version of signage (register {version}; this one "
            f"knows {VERSION}). Nothing was changed. Use the newer version."
        )
    if version == VERSION:
        return
    connection.execute("BEGIN IMMEDIATE")
    try:
        migrate(connection, version_of(connection))
    except BaseException:
        connection.execute("ROLLBACK")
        raise
    connection.execute("COMMIT")


@contextmanager
def _told(path: Path) -> Generator[None]:
    """Errors of the database as a sentence that says what to do."""
    try:
        yield
    except sqlite3.Error as error:
        raise WrongUsageError(_sentence(shown_path(path), error)) from error


def _sentence(shown: str, error: sqlite3.Error) -> str:
    for known, say in _KNOWN.items():
        if known in str(error):
            return f"The register '{shown}' {say} Nothing was changed."
    return (
        f"The register '{shown}' cannot be used: {error}. Nothing was changed. Put back the last copy that "
        "you kept of it, and do not delete the damaged one."
    )


_KNOWN = {
    "locked": "is being written by another process for more than half a minute. Wait, and try again.",
    "unable to open": "cannot be opened. Check that its folder exists and that you may write there.",
    "readonly": "may not be written by this user. Give yourself the right to write the file and its folder.",
    "not a database": "is no database. Put back the last copy that you kept of it.",
    "another programme": "is the database of another programme. Move it away, or name another folder.",
    "full": "cannot grow: the disk is full. Make room.",
}


def _now() -> int:
    pinned = pinned_time()
    return int(time.time() if pinned is None else pinned.timestamp())
