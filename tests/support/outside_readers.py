"""Readers that other people wrote: a test that needs one skips visibly without it, and fails in CI."""

import importlib
import os
import shutil

import pytest

IN_CI = os.environ.get("CI") == "true"


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
        pytest.fail(f"{what} and must not be missing in continuous integration", pytrace=False)
    return pytest.skip(f"{what}: this check did not run", allow_module_level=True)
