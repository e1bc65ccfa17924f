"""What README says to type is what is tested, with the libraries that are locked."""

import re
import tomllib
from itertools import chain

from demo import ROOT
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
EXTRAS = PROJECT["project"]["optional-dependencies"]
RUNNING = [*PROJECT["project"]["dependencies"], *PROJECT["dependency-groups"]["build"]]
LOCKS = {"requirements.lock": RUNNING, "requirements-test.lock": [*RUNNING, *EXTRAS["test"], *EXTRAS["cjk"]]}


def pins(name):
    """The entries of a lock file: requirement and hashes of each."""
    text = (ROOT / name).read_text(encoding="utf-8").replace("\\\n", " ")
    for line in text.splitlines():
        wanted, *hashes = re.split(r"\s+--hash=", line.strip())
        yield Requirement(wanted), hashes


def test_every_library_that_the_project_names_is_locked_within_its_range():
    for name, wanted in LOCKS.items():
        locked = {}
        for pin, _ in pins(name):
            locked.setdefault(canonicalize_name(pin.name), []).append(pin)
        for requirement in map(Requirement, wanted):
            found = locked.get(canonicalize_name(requirement.name), [])
            versions = [specifier.version for pin in found for specifier in pin.specifier]
            assert versions, f"{name} lacks {requirement}: run .ci/lock"
            outside = [version for version in versions if version not in requirement.specifier]
            assert outside == [], f"{name} has {outside} where {requirement} is wanted: run .ci/lock"


def test_every_locked_library_has_one_exact_version_and_hashes():
    for name in LOCKS:
        for pin, hashes in pins(name):
            assert [specifier.operator for specifier in pin.specifier] == ["=="], (name, str(pin))
            assert hashes, (name, str(pin))
            assert all(re.fullmatch(r"sha256:[0-9a-f]{64}", each) for each in hashes), (name, str(pin))


def test_a_lock_file_leaves_open_where_libraries_come_from():
    for name in LOCKS:
        text = (ROOT / name).read_text(encoding="utf-8")
        assert not re.search(r"://|--(?!hash=)|\bfile:| @ ", text), name


def test_tests_run_with_the_very_versions_that_users_get():
    running, testing = ({str(pin) for pin, _ in pins(name)} for name in LOCKS)
    assert running <= testing


def test_what_builds_the_project_is_locked_as_well():
    assert set(PROJECT["build-system"]["requires"]) < set(PROJECT["dependency-groups"]["build"])


def test_continuous_integration_types_the_two_commands_of_the_readme():
    """A chain that fails in its middle does not stop ``set -e``; ``|| exit`` does."""
    section = (ROOT / "README.md").read_text(encoding="utf-8").partition("## Two commands")[2]
    blocks = re.findall(r"```\n(.*?)\n```", section.partition("\n## ")[0], re.DOTALL)
    assert len(blocks) == 2
    assert not any("\n" in block for block in blocks)
    typed = (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()
    assert [line for line in typed if line in {f"{block} || exit" for block in blocks}] == [
        f"{block} || exit" for block in blocks
    ]
    for name, block in zip(LOCKS, blocks, strict=True):
        assert f"--require-hashes -r {name} " in block


def test_the_range_of_a_library_is_said_once():
    names = [canonicalize_name(Requirement(each).name) for each in chain(RUNNING, *EXTRAS.values())]
    assert sorted(names) == sorted(set(names))
