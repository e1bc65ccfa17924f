"""Shared by all tests: what counts as a failure and when, and the demo content."""

import os
import tempfile
from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from outside_readers import IN_CI

from signage.ground.garbage import collect_rarely

ROOT = Path(__file__).resolve().parent.parent

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

collect_rarely()


def pytest_configure(config):
    """What a run keeps is its own, shared by its workers; filters added here win over ``pyproject.toml``."""
    if "PYTEST_XDIST_WORKER" not in os.environ:
        config.kept = tempfile.TemporaryDirectory(prefix="signage-tests-")
        os.environ["XDG_CACHE_HOME"] = config.kept.name
    for line in STRICT_WARNINGS if IN_CI else ():
        config.addinivalue_line("filterwarnings", line)


def pytest_unconfigure(config):
    """Nothing of a run is left behind."""
    if hasattr(config, "kept"):
        config.kept.cleanup()


@pytest.fixture(scope="session")
def demo_content() -> Path:
    return ROOT / "content"


@pytest.fixture(scope="session")
def demo_locales() -> Path:
    return ROOT / "locales"
