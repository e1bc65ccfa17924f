"""The command as a person runs it: a subprocess, in a folder with a space and a letter beyond ASCII."""

import os
import re
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
def cut_down_demo(tmp_path_factory):
    """Layered protection alone, on A4, in English and French: all that ``check`` does, in seconds."""
    home = tmp_path_factory.mktemp("cut down")
    content, locales = home / "content", home / "locales"
    shutil.copytree(ROOT / "content", content)
    shutil.copytree(ROOT / "locales", locales)
    for protocol in (content / "protocols").iterdir():
        if protocol.stem != "layered-protection":
            protocol.unlink()
    (content / "wards" / "quay-ward.yaml").unlink()
    for path, lines in {
        content / "wards" / "lantern-bay.yaml": [(r"\n +sheets: \[clean-hands/.*", "")],
        content / "library.yaml": [
            (r"(\n  (?:ar|am|hi): .*)in-use", r"\1in-work"),
            (r"\npapers: .*", r"\npapers: [A4]"),
        ],
    }.items():
        text = path.read_text(encoding="utf-8")
        for old, new in lines:
            text, count = re.subn(old, new, text)
            assert count, old
        path.write_text(text, encoding="utf-8")
    signage(home, "words", "update")
    return home


@pytest.fixture
def small(folder, cut_down_demo):
    """A copy of the cut-down demo to spoil."""
    shutil.copytree(cut_down_demo, folder, dirs_exist_ok=True)
    return folder


def signage(folder, *arguments, expect=0):
    done = subprocess.run(
        [sys.executable, "-m", "signage", *arguments],
        check=False,
        cwd=folder,
        capture_output=True,
        text=True,
        encoding="utf-8",
        env={**os.environ, "PYTHONIOENCODING": "utf-8", "COLUMNS": "200", "SOURCE_DATE_EPOCH": DAY},
        timeout=100,
    )
    assert "Traceback" not in done.stderr
    assert done.returncode == expect, done.stdout + done.stderr
    return done


@pytest.fixture
def run():
    return signage
