import os

import pytest

from signage.ground.errors import WrongUsageError
from signage.ground.files import read_ordinary, write_whole


def test_a_file_is_written_with_its_folders(tmp_path):
    write_whole(tmp_path / "a b" / "ü.pdf", b"data")
    assert (tmp_path / "a b" / "ü.pdf").read_bytes() == b"data"


def test_the_old_file_survives_a_failed_write(tmp_path, monkeypatch):
    target = tmp_path / "sheet.pdf"
    target.write_bytes(b"old")
    monkeypatch.setattr("pathlib.Path.replace", lambda *_: (_ for _ in ()).throw(OSError("disk full")))
    with pytest.raises(OSError, match="disk full") as failed:
        write_whole(target, b"new")
    assert failed.value.filename == str(target)
    assert target.read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["sheet.pdf"]


def test_a_pipe_is_refused_instead_of_waited_for(tmp_path):
    pipe = tmp_path / "content.po"
    os.mkfifo(pipe)
    for path in (pipe, tmp_path):
        with pytest.raises(OSError, match="no ordinary file"):
            read_ordinary(path)
    (tmp_path / "file").write_bytes(b"12345")
    assert read_ordinary(tmp_path / "file", 3) == b"123"


def test_only_an_ordinary_file_is_ever_replaced(tmp_path):
    target, link, pipe, folder = (tmp_path / name for name in ("kept", "link", "pipe", "folder"))
    target.write_bytes(b"kept")
    link.symlink_to(target)
    os.mkfifo(pipe)
    folder.mkdir()
    for path, what in ((link, "a link"), (pipe, "no ordinary file"), (folder, "a folder")):
        with pytest.raises(WrongUsageError, match=f"is {what}, and nothing was written"):
            write_whole(path, b"new")
    assert target.read_bytes() == b"kept"
    assert link.is_symlink()
    assert pipe.is_fifo()
    assert sorted(p.name for p in tmp_path.iterdir()) == ["folder", "kept", "link", "pipe"]
