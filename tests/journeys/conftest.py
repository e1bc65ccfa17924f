"""The command as a person runs it: a subprocess, in a folder with a space and a letter beyond ASCII."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]

DAY = "1795651200"
"""2026-11-26, so that the reviews of the demo are never late (reproducible-builds.org)."""


@pytest.fixture
def folder(tmp_path):
    home = tmp_path / "wärd 7"
    home.mkdir()
    return home


@pytest.fixture
def demo(folder):
    """A copy of the demo to spoil."""
    shutil.copytree(ROOT / "content", folder / "content")
    shutil.copytree(ROOT / "locales", folder / "locales")
    return folder


@pytest.fixture(scope="session")
def begun(tmp_path_factory):
    """The small library that ``signage start`` writes: all that a command does, in a moment."""
    home = tmp_path_factory.mktemp("begun")
    signage(home, "start", "my ward")
    return home / "my ward"


@pytest.fixture
def ward(folder, begun):
    """A copy of the small library to spoil."""
    shutil.copytree(begun, folder / "my ward")
    return folder / "my ward"


def signage(folder, *arguments, expect=0, day=DAY):
    done = subprocess.run(
        [sys.executable, "-m", "signage", *arguments],
        check=False,
        cwd=folder,
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={**os.environ, "PYTHONIOENCODING": "utf-8", "COLUMNS": "200", "SOURCE_DATE_EPOCH": day},
        timeout=100,
    )
    assert "Traceback" not in done.stderr
    assert done.returncode == expect, done.stdout + done.stderr
    return done


@pytest.fixture
def run():
    return signage
