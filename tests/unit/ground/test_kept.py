import hashlib
import multiprocessing
import os

import pytest

from signage.ground.kept import Kept, open_kept


def key_of(number):
    return hashlib.sha256(str(number).encode()).hexdigest()


def files_of(folder):
    return [path for path in folder.rglob("*") if path.is_file()]


def write_many(folder):
    kept = Kept(folder)
    for number in range(40):
        kept.keep(key_of(number), str(number).encode() * 5_000)


def test_a_result_is_found_by_its_key_alone_and_never_in_a_fresh_run(tmp_path):
    kept = open_kept(tmp_path / "kept")
    kept.keep_json(key_of(1), {"pages": 2})
    assert kept.find_json(key_of(1)) == {"pages": 2}
    assert kept.find(key_of(2)) is None
    assert open_kept(tmp_path / "kept", is_fresh=True).find(key_of(1)) is None


@pytest.mark.parametrize("spoil", ["cut", "changed", "empty", "moved"])
def test_what_a_kill_or_somebody_else_left_is_not_taken_for_a_result(tmp_path, spoil):
    kept = open_kept(tmp_path / "kept")
    kept.keep(key_of(1), b"the sheet of one protocol")
    kept.keep(key_of(2), b"the sheet of another")
    [one] = [path for path in files_of(tmp_path) if path.parent.name == key_of(1)[:2]]
    [other] = [path for path in files_of(tmp_path) if path != one]
    data = one.read_bytes()
    one.write_bytes(
        {"cut": data[:-3], "changed": data[:-3] + b"xyz", "empty": b"", "moved": other.read_bytes()}[spoil]
    )
    assert kept.find(key_of(1)) is None
    assert kept.find(key_of(2)) == b"the sheet of another"
    kept.keep(key_of(1), b"made again")
    assert kept.find(key_of(1)) == b"made again"


@pytest.mark.skipif(not hasattr(os, "getuid"), reason="rights of this kind are those of POSIX")
def test_a_folder_in_which_others_may_write_is_not_used(tmp_path):
    folder = tmp_path / "kept"
    folder.mkdir()
    folder.chmod(0o777)
    assert open_kept(folder) == Kept()
    link = tmp_path / "link"
    link.symlink_to(tmp_path)
    assert open_kept(link) == Kept()


def test_a_folder_that_cannot_be_used_stops_nothing(tmp_path):
    (tmp_path / "file").write_text("")
    kept = open_kept(tmp_path / "file" / "kept")
    kept.keep(key_of(1), b"x")
    assert kept.find(key_of(1)) is None
    assert kept.trim() == 0
    taken = Kept(tmp_path)
    (tmp_path / key_of(1)[:2]).write_text("in the way")
    taken.keep(key_of(1), b"x")
    assert taken.find(key_of(1)) is None


def test_two_runs_at_once_leave_whole_results(tmp_path):
    context = multiprocessing.get_context("spawn")
    runs = [context.Process(target=write_many, args=(tmp_path,)) for _ in range(2)]
    for run in runs:
        run.start()
    for run in runs:
        run.join(60)
    kept = Kept(tmp_path)
    assert [kept.find(key_of(number)) for number in range(40)] == [
        str(number).encode() * 5_000 for number in range(40)
    ]
    assert not [path for path in files_of(tmp_path) if path.suffix == ".part"]


def test_what_was_used_longest_ago_goes_first(tmp_path):
    kept = Kept(tmp_path)
    for number in range(10):
        kept.keep(key_of(number), bytes(1000))
    for path in files_of(tmp_path):
        os.utime(path, (1, 1))
    assert kept.find(key_of(3)) == bytes(1000)
    half_written = tmp_path / key_of(3)[:2] / "old.part"
    half_written.write_bytes(bytes(1000))
    os.utime(half_written, (1, 1))
    assert kept.trim(most_bytes=5 * 1032) == 5
    assert kept.find(key_of(3)) == bytes(1000)
    assert len(files_of(tmp_path)) == 5
