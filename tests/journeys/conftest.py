"""The command as a person runs it: a subprocess, in a folder with a space and a letter beyond ASCII."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]


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


@pytest.fixture
def run():
    def run_in(folder, *arguments, expect=0):
        done = subprocess.run(
            [sys.executable, "-m", "signage", *arguments],
            check=False,
            cwd=folder,
            capture_output=True,
            text=True,
            encoding="utf-8",
            env={**os.environ, "PYTHONIOENCODING": "utf-8", "COLUMNS": "200"},
            timeout=300,
        )
        assert "Traceback" not in done.stderr
        assert done.returncode == expect, done.stdout + done.stderr
        return done

    return run_in
