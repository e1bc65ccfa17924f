"""The tables of ``register.db``. Rows are only added: triggers refuse to change or to delete any."""

from __future__ import annotations

import sqlite3

APPLICATION_ID = 0x53_47_52_47
"""``SGRG`` in the header of the file (SQLite, "PRAGMA application_id"), by which others know what it is."""

_FIRST = """
CREATE TABLE meta (name TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
CREATE TABLE copy (
    number TEXT PRIMARY KEY NOT NULL,
    running INTEGER NOT NULL UNIQUE,
    sheet TEXT NOT NULL,
    subject TEXT NOT NULL,
    locale TEXT NOT NULL,
    code TEXT NOT NULL,
    hash TEXT NOT NULL,
    mark TEXT NOT NULL,
    printed_on TEXT NOT NULL,
    by_role TEXT NOT NULL,
    at_unix INTEGER NOT NULL
) STRICT;
CREATE TABLE event (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    copy TEXT NOT NULL REFERENCES copy (number),
    kind TEXT NOT NULL
        CHECK (kind IN ('mounted', 'removed', 'destroyed', 'lost', 'replaced', 'audited')),
    on_day TEXT NOT NULL,
    by_role TEXT NOT NULL CHECK (by_role <> ''),
    note TEXT NOT NULL DEFAULT '',
    ward TEXT NOT NULL DEFAULT '',
    slot TEXT NOT NULL DEFAULT '',
    learner TEXT NOT NULL DEFAULT '',
    at_unix INTEGER NOT NULL,
    CHECK (kind <> 'lost' OR note <> ''),
    CHECK ((kind = 'mounted') = (slot <> '' OR learner <> '')),
    CHECK (slot = '' OR learner = '')
) STRICT;
CREATE INDEX event_of_copy ON event (copy, id);
CREATE TABLE seen (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    approvals_n INTEGER NOT NULL,
    approvals_hash TEXT NOT NULL,
    at_unix INTEGER NOT NULL
) STRICT;
CREATE TABLE report (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    kind TEXT NOT NULL CHECK (kind IN ('recall-closed', 'audit', 'incident')),
    subject TEXT NOT NULL,
    on_day TEXT NOT NULL,
    by_role TEXT NOT NULL CHECK (by_role <> ''),
    content TEXT NOT NULL,
    at_unix INTEGER NOT NULL
) STRICT;
"""

_ADDED_ONLY = ("copy", "event", "seen", "report")

_TRIGGERS = """
CREATE TRIGGER {table}_is_not_changed BEFORE UPDATE ON {table}
BEGIN SELECT RAISE(ABORT, 'rows of the register are only added'); END;
CREATE TRIGGER {table}_is_not_deleted BEFORE DELETE ON {table}
BEGIN SELECT RAISE(ABORT, 'rows of the register are only added'); END;
CREATE TRIGGER {table}_is_not_put_over BEFORE INSERT ON {table}
WHEN EXISTS (SELECT 1 FROM {table} WHERE {key} = NEW.{key})
BEGIN SELECT RAISE(ABORT, 'rows of the register are only added'); END;
"""
"""The third refuses what SQLite would otherwise do for INSERT OR REPLACE without asking the second."""


def _first(connection: sqlite3.Connection) -> None:
    triggers = (
        _TRIGGERS.format(table=table, key="number" if table == "copy" else "id") for table in _ADDED_ONLY
    )
    for statement in _statements("".join((_FIRST, *triggers))):
        connection.execute(statement)
    connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")


def _statements(script: str) -> list[str]:
    """The statements of a script: ``executescript`` would end the transaction that they belong to."""
    found, begun = [], ""
    for line in script.splitlines(keepends=True):
        begun += line
        if sqlite3.complete_statement(begun):
            found.append(begun.strip())
            begun = ""
    return found


MIGRATIONS = (_first,)
"""What turns a register of version n, counted from 0 for an empty file, into one of version n + 1."""

VERSION = len(MIGRATIONS)


def version_of(connection: sqlite3.Connection) -> int:
    """The version of the tables; 0 where there are none.

    Raises sqlite3.DatabaseError for the database of another programme.
    """
    tables = {name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
    if not tables:
        return 0
    (application,) = connection.execute("PRAGMA application_id").fetchone()
    row = None
    if "meta" in tables and application == APPLICATION_ID:
        row = connection.execute("SELECT value FROM meta WHERE name = 'schema_version'").fetchone()
    if row is None or not row[0].isdecimal():
        raise sqlite3.DatabaseError("it is the database of another programme")
    return int(row[0])


def migrate(connection: sqlite3.Connection, version: int) -> None:
    """Bring the tables from a version to that of this programme, inside the transaction that is open."""
    for step in MIGRATIONS[version:]:
        step(connection)
    connection.execute(
        "INSERT INTO meta VALUES ('schema_version', ?)"
        " ON CONFLICT (name) DO UPDATE SET value = excluded.value",
        (str(VERSION),),
    )
