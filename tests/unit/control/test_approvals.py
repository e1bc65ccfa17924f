"""The chain of sign-offs: what is found where, and that a remembered head sees a cut."""

import json
import multiprocessing
import os
import signal
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

import pytest
from record_samples import SAMPLE, record

from signage.control.approvals import Head, held_against, read_ledger, with_record, written
from signage.control.approvals_file import SEEN, approvals_file
from signage.control.records import RecordKind
from signage.control.register.store import open_register, register_path
from signage.ground.errors import RefusedError
from signage.ground.fingerprint import canonical_json

LOG = written(SAMPLE.records)
LINES = LOG.splitlines(keepends=True)


def fault_of(data):
    ledger = read_ledger(data, "content/approvals.jsonl")
    assert not ledger.records or ledger.fault is None
    return ledger.fault


def test_a_whole_file_is_read_as_it_was_written():
    assert read_ledger(LOG, "x") == SAMPLE
    assert read_ledger(b"", "x").records == ()
    assert [json.loads(line)["n"] for line in LINES] == [1, 2, 3, 4]


def test_the_first_bad_line_is_named_with_what_was_wanted_and_what_to_do():
    other = canonical_json({**json.loads(LINES[1]), "who": "x"}) + b"\n"
    less = json.loads(LINES[1])
    del less["reason"]
    for data, line, words in (
        (LOG.replace(b"ward-lead", b"ward-lend", 1), 1, "its own hash is of another record"),
        (LINES[0] + LINES[2] + LINES[3], 2, "holds record 3; record 2 was wanted"),
        (LINES[0] + LINES[2] + LINES[1] + LINES[3], 2, "holds record 3"),
        (b"".join(LINES[:2]) + b"\n" + b"".join(LINES[2:]), 3, "one JSON object was wanted"),
        (LINES[0] + other, 2, "a field 'who' that this version does not know"),
        (LINES[0] + canonical_json(less) + b"\n", 2, "lacks the field 'reason'"),
        (LINES[0] + LINES[1].replace(b'":', b'": ', 1), 2, "not written as signage writes it"),
        (LOG.replace(b"\n", b"\r\n"), 1, "not written"),
        (LOG + b"\n", 5, "one JSON object was wanted"),
        (LOG[:-1], 4, "ends in the middle of a line"),
        (LOG + b"[[[[" * 100_000 + b"\n", 5, "one JSON object was wanted"),
        (LINES[0] + b'{"n":2,"n":2}\n', 2, "one JSON object was wanted"),
    ):
        fault = fault_of(data)
        assert fault is not None, words
        assert words in fault.message, (words, fault)
        assert str(fault).startswith(f"content/approvals.jsonl:{line}:1: ")
        assert "Restore the file" in fault.hint
    assert "-text" in fault_of(LOG.replace(b"\n", b"\r\n")).hint


def test_a_record_made_anew_in_the_middle_breaks_the_chain_after_it():
    """Somebody who edits a record and mends its own hash still has to make every later one anew."""
    forged = replace(SAMPLE.records[1], by="night-porter").sealed()
    fault = fault_of(LINES[0] + forged.line() + b"\n" + LINES[2] + LINES[3])
    assert (fault.place.line, "does not follow" in fault.message) == (3, True)


def test_a_remembered_head_sees_what_the_chain_alone_cannot():
    short = read_ledger(LINES[0] + LINES[1], "x")
    assert short.fault is None
    forged = read_ledger(
        written((*SAMPLE.records[:3], replace(SAMPLE.records[3], reason="No").sealed())), "x"
    )
    assert forged.fault is None
    for ledger, seen, words in (
        (SAMPLE, SAMPLE.head, None),
        (SAMPLE, short.head, None),
        (short, SAMPLE.head, "4 records were seen, and the file holds 2: its end was cut"),
        (read_ledger(b"", "x"), SAMPLE.head, "the file holds 0"),
        (forged, SAMPLE.head, "Record 4 is not the one that was seen before"),
        (SAMPLE, None, "Nobody has confirmed"),
        (read_ledger(b"", "x"), None, None),
    ):
        held = held_against(ledger, seen, "a.jsonl")
        assert (held.fault is None) if words is None else (words in held.fault.message)
        assert words is None or held.records == ()


def test_nothing_is_added_to_a_file_that_is_damaged_or_cut(tmp_path):
    file = approvals_file(tmp_path / "content")
    for each in SAMPLE.records:
        file.append(lambda _ledger, each=each: each)
    assert file.path.read_bytes() == LOG
    for damaged in (LOG[:-1], b"".join(LINES[:3]), b""):
        file.path.write_bytes(damaged)
        with pytest.raises(RefusedError, match=r"approvals\.jsonl"):
            file.append(lambda _ledger: SAMPLE.records[0])
        assert file.path.read_bytes() == damaged
    file.path.unlink()
    assert "was cut" in file.read().fault.message


def test_a_role_confirms_the_head_on_a_machine_that_has_seen_none(tmp_path):
    file = approvals_file(tmp_path / "content")
    file.path.parent.mkdir()
    file.path.write_bytes(LOG)
    assert "confirm" in file.read().fault.hint
    with pytest.raises(RefusedError, match="changed since"):
        file.confirm(Head(3, SAMPLE.records[2].own_hash))
    file.confirm(SAMPLE.head)
    assert file.read() == SAMPLE


def test_a_head_that_has_grown_elsewhere_is_taken_and_then_remembered(tmp_path):
    file = approvals_file(tmp_path / "content")
    file.append(lambda _ledger: SAMPLE.records[0])
    file.path.write_bytes(LOG)
    file.remember(file.read())
    assert file.memory.head() == SAMPLE.head


def test_the_register_remembers_the_end_that_somebody_cuts_with_its_file(tmp_path):
    file = approvals_file(tmp_path / "content")
    for each in SAMPLE.records:
        file.append(lambda _ledger, each=each: each)
    open_register(register_path(tmp_path / "content")).close()
    file.remember(file.read())
    file.path.write_bytes(b"".join(LINES[:2]))
    (tmp_path / SEEN).unlink()
    assert "was cut" in file.read().fault.message
    file.confirm(file.whole().head)
    assert file.read().records == SAMPLE.records[:2]


def _add(content, count):
    file = approvals_file(Path(content))
    for _ in range(count):
        file.append(lambda _ledger: record(RecordKind.PROTOCOL))


def test_two_processes_at_once_lose_nothing(tmp_path):
    context = multiprocessing.get_context("spawn")
    each = [context.Process(target=_add, args=(str(tmp_path / "content"), 15)) for _ in range(2)]
    for process in each:
        process.start()
    for process in each:
        process.join(60)
        assert process.exitcode == 0
    assert len(approvals_file(tmp_path / "content").read().records) == 30


WRITER = """
import sys
from pathlib import Path
from record_samples import record
from signage.control.approvals_file import SEEN, approvals_file
from signage.control.records import RecordKind
file = approvals_file(Path(sys.argv[1]))
while True:
    print(file.append(lambda _ledger: record(RecordKind.PROTOCOL)).n, flush=True)
"""


@pytest.mark.skipif(os.name == "nt", reason="Windows has no signal that cannot be caught")
def test_a_process_killed_in_the_middle_loses_nothing_that_it_has_acknowledged(tmp_path):
    content = tmp_path / "content"
    support = Path(__file__).resolve().parents[2] / "support"
    for wait in (0.3, 0.31, 0.32):
        with subprocess.Popen(
            [sys.executable, "-c", WRITER, str(content)],
            stdout=subprocess.PIPE,
            env={**os.environ, "PYTHONPATH": str(support)},
        ) as process:
            first = process.stdout.readline()
            time.sleep(wait)
            process.send_signal(signal.SIGKILL)
            acknowledged = [int(line) for line in (first + process.stdout.read()).split(b"\n")[:-1]]
        ledger = approvals_file(content).read()
        assert ledger.fault is None
        assert len(ledger.records) >= acknowledged[-1] > 0


def test_a_ledger_with_a_fault_takes_no_record():
    with pytest.raises(ValueError, match="middle of a line"):
        with_record(read_ledger(LOG[:-1], "x"), SAMPLE.records[0])
