"""Commands in this process, on the small library that ``signage start`` writes."""

import json

import pytest

from signage.cli.main import run as run_command
from signage.load.starter import starter_files


@pytest.fixture
def ward(tmp_path, monkeypatch):
    for name, data in starter_files().items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    monkeypatch.chdir(tmp_path)
    return tmp_path


class Told:
    """What a command said, and its exit status."""

    def __init__(self, status, captured):
        self.status, self.out, self.err = status, captured.out, captured.err

    @property
    def json(self):
        """Standard output as one object."""
        return json.loads(self.out)


@pytest.fixture
def signage(capsys):
    """Runs a command; words are parted at spaces unless they come one by one."""

    def run(*words):
        with pytest.raises(SystemExit) as left:
            run_command(words[0].split() if len(words) == 1 else list(words))
        return Told(left.value.code, capsys.readouterr())

    return run
