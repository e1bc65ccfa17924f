"""Each place of the source that reports a finding is switched off in turn: does any sample miss it?

The samples are the case files of the rules and the tests of worked examples. ``python rules_switched_off.py``
lists the places whose absence nobody would notice.
"""

import ast
import importlib.util
import inspect
import sys
from collections import defaultdict
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from signage.rehearse.state.scene import Scene

ROOT = Path(__file__).resolve().parents[2]
SOURCE = ROOT / "signage" / "rehearse"
TESTS = ROOT / "tests" / "unit" / "rehearse"
REPORTING = ("report", "report_form")
EXAMPLES = ("test_worked_examples", "test_state_examples", "test_second_hospital")
"""Tests whose plain functions are worked examples."""

_NO_PLACE = SOURCE / "state" / "scene.py"
"""Where reporting itself is defined."""


@dataclass(frozen=True, order=True)
class Site:
    """A call that reports: its file within the room, its lines, and the rule that it names."""

    file: str
    first: int
    last: int
    rule: str

    def __str__(self) -> str:
        return f"{self.file}:{self.first} {self.rule}"


def sites() -> list[Site]:
    """Every call of ``scene.report`` and ``scene.report_form`` in the room of the rehearsal."""
    found = []
    for path in sorted(SOURCE.rglob("*.py")):
        if path == _NO_PLACE:
            continue
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if (
                isinstance(node, ast.Call)
                and isinstance(node.func, ast.Attribute)
                and node.func.attr in REPORTING
            ):
                rule = ast.unparse(node.args[0]) if node.args else "?"
                last = node.end_lineno or node.lineno
                found.append(Site(str(path.relative_to(SOURCE)), node.lineno, last, rule))
    return found


def samples() -> dict[str, Callable[[], None]]:
    """Samples by name; each raises ``AssertionError`` where it does not find what it should."""
    cases = _module(TESTS / "test_cases.py")
    found = {param.id: lambda case=param.values[0]: _hold(case) for param in cases.ALL}
    for path in sorted(TESTS.glob("test_*.py")):
        if path.stem in EXAMPLES:
            found.update({f"{path.stem}.{name}": test for name, test in _plain_tests(_module(path))})
    return found


def _hold(case) -> None:
    assert case.found() == case.expected


def _module(path):
    spec = importlib.util.spec_from_file_location(f"sample_{path.stem}", path)
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


def _plain_tests(module) -> Iterator[tuple[str, Callable[[], None]]]:
    """Test functions and methods that take no argument and are not expected to fail."""
    for name, value in vars(module).items():
        if name.startswith("test_") and not inspect.signature(value).parameters and not _marks(value):
            yield name, value
        elif name.startswith("Test") and inspect.isclass(value):
            for method, function in vars(value).items():
                if method.startswith("test_") and list(inspect.signature(function).parameters) == ["self"]:
                    yield f"{name}.{method}", getattr(value(), method)


def _marks(function) -> bool:
    return bool(getattr(function, "pytestmark", []))


@contextmanager
def watched(switched_off: Site | None = None) -> Iterator[set[tuple[str, int]]]:
    """The lines that report meanwhile; what the site that is switched off reports is dropped."""
    seen: set[tuple[str, int]] = set()
    originals = {name: getattr(Scene, name) for name in REPORTING}

    def watching(original):
        def report(self, *args, **keywords):
            frame = sys._getframe(1)
            file = frame.f_code.co_filename
            place = (file.partition("signage/rehearse/")[2], frame.f_lineno)
            seen.add(place)
            if switched_off is None or not _is_at(switched_off, place):
                original(self, *args, **keywords)

        return report

    for name, original in originals.items():
        setattr(Scene, name, watching(original))
    try:
        yield seen
    finally:
        for name, original in originals.items():
            setattr(Scene, name, original)


def _is_at(site: Site, place: tuple[str, int]) -> bool:
    return site.file == place[0] and site.first <= place[1] <= site.last


def unnoticed() -> list[Site]:
    """The sites that no sample reaches, and those without which every sample still holds."""
    every, by_site = samples(), defaultdict(list)
    all_sites = sites()
    for name, sample in every.items():
        with watched() as seen:
            sample()
        for site in all_sites:
            if any(_is_at(site, place) for place in seen):
                by_site[site].append(name)
    return [site for site in all_sites if not any(_misses(every[name], site) for name in by_site[site])]


def _misses(sample: Callable[[], None], site: Site) -> bool:
    with watched(switched_off=site):
        try:
            sample()
        except (AssertionError, StopIteration, IndexError, ValueError, KeyError):
            return True
    return False


if __name__ == "__main__":
    for site in unnoticed():
        print(site)  # noqa: T201 - what is asked for
