import os
import signal
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path

import pytest
import register_samples
from register_samples import DAY, add, happened, mounted, new_copy

from signage.control.register.export import history_csv
from signage.control.register.network_share import file_system_of, is_of_network
from signage.control.register.schema import VERSION
from signage.control.register.store import find_register, open_register
from signage.ground.errors import SignageError
from signage.model.copies import EventKind
from signage.model.copy_number import read_copy_number

_WRITER = """
import sys
from pathlib import Path
from register_samples import DAY, add, mounted, new_copy
from signage.control.register.store import open_register
register = open_register(Path(sys.argv[1]))
for index in range(int(sys.argv[2])):
    (copy,) = register.add_copies([new_copy()], DAY, "icn")
    add(register, mounted(copy.number))
    print(copy.number, flush=True)
"""


@pytest.fixture
def register(tmp_path):
    with open_register(tmp_path / "register.db") as opened:
        yield opened


def _writer(path, count):
    return subprocess.Popen(
        [sys.executable, "-c", _WRITER, str(path), str(count)],
        stdout=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONPATH": str(Path(register_samples.__file__).parent)},
    )


def test_the_last_event_is_the_state_of_a_copy_and_audits_change_none(register):
    first, second = register.add_copies([new_copy(), new_copy(locale="ar")], DAY, "icn")
    add(register, mounted(first.number), happened(first.number, EventKind.AUDITED, "present"))
    by_number = {each.copy.number: each for each in register.states()}
    assert (by_number[first.number].state, str(by_number[first.number].spot)) == ("mounted", "w/s1")
    assert by_number[second.number].state == "printed"
    add(register, happened(first.number, EventKind.REMOVED))
    assert [each.state for each in register.states()] == ["removed", "printed"]
    assert read_copy_number(first.number) == first.number != second.number


def test_what_is_added_together_is_added_whole_or_not_at_all(register):
    (copy,) = register.add_copies([new_copy()], DAY, "icn")
    with pytest.raises(SignageError, match="FOREIGN KEY"):
        add(register, mounted(copy.number), mounted("LB-9999-X"))
    assert [each.state for each in register.states()] == ["printed"]


def test_nothing_is_ever_changed_or_deleted(register, tmp_path):
    (copy,) = register.add_copies([new_copy()], DAY, "icn")
    add(register, mounted(copy.number))
    with register.changing():
        register.add_report("incident", "p", DAY, "icn", "{}")
    register.remember_seen(1, "a" * 64)
    kept = register.copies(), register.events(), register.reports("incident"), register.read_seen()
    with closing(sqlite3.connect(tmp_path / "register.db", isolation_level=None)) as other:
        for table in ("copy", "event", "seen", "report"):
            for statement in (
                f"DELETE FROM {table}",  # noqa: S608 - the tables are named above
                f"UPDATE {table} SET at_unix = 0",  # noqa: S608
                f"INSERT OR REPLACE INTO {table} SELECT * FROM {table}",  # noqa: S608
            ):
                with pytest.raises(sqlite3.IntegrityError, match="only added"):
                    other.execute(statement)
    assert kept == (register.copies(), register.events(), register.reports("incident"), register.read_seen())


def test_a_loss_without_a_note_and_a_copy_mounted_nowhere_are_refused(register):
    (copy,) = register.add_copies([new_copy()], DAY, "icn")
    for bad in (happened(copy.number, "lost"), happened(copy.number, "mounted")):
        with pytest.raises(SignageError, match="CHECK"):
            add(register, bad)
    assert register.events() == ()


def test_the_head_of_the_sign_offs_is_remembered_once(register):
    assert register.read_seen() is None
    for _ in range(2):
        register.remember_seen(3, "c" * 64)
    assert register.read_seen() == (3, "c" * 64)


def test_two_processes_at_once_lose_nothing(tmp_path):
    path = tmp_path / "register.db"
    writers = [_writer(path, 15) for _ in range(2)]
    told = [line for writer in writers for line in writer.communicate(timeout=100)[0].split()]
    assert [writer.returncode for writer in writers] == [0, 0]
    with open_register(path) as register:
        assert sorted(each.copy.number for each in register.states() if each.is_out) == sorted(told)
    assert len(set(told)) == 30


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="this system cannot kill a process so")
def test_a_kill_in_the_middle_loses_nothing_that_was_acknowledged(tmp_path):
    path = tmp_path / "register.db"
    for until in (1, 3, 7):
        writer = _writer(path, 1000)
        told = [writer.stdout.readline().strip() for _ in range(until)]
        os.kill(writer.pid, signal.SIGKILL)
        told += writer.communicate(timeout=100)[0].split("\n")[:-1]
        with open_register(path) as register:
            out = {each.copy.number for each in register.states() if each.is_out}
        assert out.issuperset(number for number in told if read_copy_number(number)), until
    with closing(sqlite3.connect(path)) as other:
        assert other.execute("PRAGMA integrity_check").fetchall() == [("ok",)]


def test_the_file_is_as_durable_as_the_plan_says(register, tmp_path):
    settings = [
        register._connection.execute(f"PRAGMA {name}").fetchone()[0]
        for name in ("journal_mode", "synchronous", "foreign_keys")
    ]
    assert settings == ["delete", 2, 1]
    tables = register._connection.execute("SELECT name, strict FROM pragma_table_list WHERE type = 'table'")
    assert {name for name, strict in tables if strict} == {"copy", "event", "seen", "meta", "report"}


def test_a_register_that_cannot_be_used_is_told_in_a_sentence(tmp_path):
    path = tmp_path / "register.db"
    assert find_register(path) is None
    assert not path.exists()
    open_register(path).close()
    with closing(sqlite3.connect(path, isolation_level=None)) as other:
        other.execute("UPDATE meta SET value = '99'")
    damaged = tmp_path / "damaged.db"
    damaged.write_bytes(b"no database at all" * 100)
    foreign = tmp_path / "foreign.db"
    with closing(sqlite3.connect(foreign)) as other:
        other.execute("CREATE TABLE things (name)")
    (tmp_path / "folder.db").mkdir()
    for file, words in (
        (path, f"newer version of signage .register 99; this one knows {VERSION}."),
        (damaged, "is no database"),
        (foreign, "is the database of another programme"),
        (tmp_path / "folder.db", "is a folder"),
        (tmp_path / "nowhere" / "register.db", "cannot be opened"),
    ):
        with pytest.raises(SignageError, match=words):
            open_register(file)


def test_the_history_is_exported_without_formulas(register):
    (copy,) = register.add_copies([new_copy()], DAY, "icn")
    add(register, mounted(copy.number), happened(copy.number, "lost", '=HYPERLINK("x")'))
    lines = history_csv(register.copies(), register.events()).splitlines()
    assert lines[0].startswith("number,happened,day,")
    assert [line.split(",")[1] for line in lines[1:]] == ["printed", "mounted", "lost"]
    assert "'=HYPERLINK" in lines[3]


def test_a_folder_of_another_machine_is_known_by_its_file_system():
    mounts = (
        "22 1 8:1 / / rw - ext4 /dev/sda1 rw\n"
        "40 22 0:41 / /mnt/ward\\040files rw - cifs //server/ward rw\n"
        "41 22 0:42 / /mnt/ward rw - nfs4 server:/ward rw\n"
    )
    assert file_system_of("/mnt/ward files/library", mounts) == "cifs"
    assert file_system_of("/mnt/ward/library", mounts) == "nfs4"
    assert file_system_of("/mnt/warden", mounts) == "ext4"
    assert [is_of_network(name) for name in ("cifs", "nfs4", "ext4", "tmpfs")] == [True, True, False, False]
