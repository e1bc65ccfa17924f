"""Shared by all tests: what counts as a failure and when, outside readers, and the demo content."""

import importlib
import os
import shutil
from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings

ROOT = Path(__file__).resolve().parent.parent
IN_CI = os.environ.get("CI") == "true"

STRICT_WARNINGS = (
    "error",
    "ignore::DeprecationWarning:reportlab",  # it still calls what newer Pythons give up
    "ignore::DeprecationWarning:importlib",  # types of SWIG in wheels of others, on newer Pythons
)
"""Every warning fails in continuous integration; each exception is named and says whose it is.

On a person's machine (``pyproject.toml``) a warning of our own modules fails unless it tells of a
deprecation: a library raises that in the name of its caller, so a newer library would fail a suite in
which nothing is wrong. Nobody but the people who keep this project can mend it, and they see it here.
"""

LONGEST_EXAMPLE = timedelta(seconds=30)
"""One generated input that takes longer is a hang in the eyes of a user."""

settings.register_profile(
    "searching",
    deadline=LONGEST_EXAMPLE,
    print_blob=True,
    suppress_health_check=[HealthCheck.too_slow],  # it measures the machine
)
settings.register_profile("repeatable", settings.get_profile("searching"), derandomize=True, database=None)
settings.load_profile("searching" if IN_CI else "repeatable")


def pytest_configure(config):
    """Filters that are added later win over those of ``pyproject.toml``."""
    for line in STRICT_WARNINGS if IN_CI else ():
        config.addinivalue_line("filterwarnings", line)


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
    return absent(f"the outside reader {name} is not installed")


def absent(what: str):
    """A check that cannot run here: a failure in continuous integration, elsewhere a visible skip."""
    if IN_CI:
        pytest.fail(f"{what} and must not be missing in continuous integration")
    return pytest.skip(f"{what}: this check did not run")


@pytest.fixture(scope="session")
def demo_content() -> Path:
    return ROOT / "content"


@pytest.fixture(scope="session")
def demo_locales() -> Path:
    return ROOT / "locales"
