"""Shared by all tests: outside readers, and the demo content."""

import importlib
import os
import shutil
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent


def outside(name: str):
    """An outside reader: a Python module, or the path of a programme.

    Absent, it skips visibly on a person's machine and fails in continuous integration.
    """
    try:
        return importlib.import_module(name)
    except ImportError:
        programme = shutil.which(name)
    if programme is not None:
        return programme
    if os.environ.get("CI") == "true":
        pytest.fail(f"the outside reader {name} is missing and must not be in continuous integration")
    return pytest.skip(f"the outside reader {name} is not installed: this check did not run")


@pytest.fixture(scope="session")
def demo_content() -> Path:
    return ROOT / "content"


@pytest.fixture(scope="session")
def demo_locales() -> Path:
    return ROOT / "locales"
