"""Findings of one cause told once: many sheets, many gaps, many characters without a font.

Programmes get every problem; people get as many lines as there are things to mend.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Hashable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from signage.ground.problem import Problem

MOST_OF_A_FILE = 100
"""Findings of one file that a report tells; whoever mends a hundred runs the check again anyway."""

MOST_OF_A_CODE = 20
"""Findings of one code in one file that a report tells."""

FEWEST_TO_COUNT = 3
"""So many findings of one cause are told as a number; fewer are told one by one."""

_COUNTED = {
    "WD-1": "{number} texts are missing in {locale}",
    "WD-2": "{number} translations are marked as doubtful in {locale}",
    "WD-3": "{number} translations in {locale} were made for an older source text",
    "WD-14": "{number} entries in {locale} belong to no text of the library",
    "SH-2": "No font has {characters} characters of {locale}, in {number} places",
}
"""What is said of a cause that a whole language shares."""

_NUMBER = re.compile(r"\d+(?:[.,]\d+)*")
_CODE_POINT = re.compile(r"U\+[0-9A-F]{4,6}")


@dataclass(frozen=True, slots=True)
class Finding:
    """Problems of one cause: the first of them, how many there are, and the sheets that they concern.

    ``counted`` is what is said of all of them where they are counted, else empty.
    """

    first: Problem
    number: int
    sheets: tuple[str, ...] = ()
    counted: str = ""

    @property
    def sentence(self) -> str:
        """What is told."""
        return f"{self.counted}, first: {self.first.message}" if self.counted else self.first.message


@dataclass(frozen=True, slots=True)
class Grouped:
    """What a report tells, and of which file and code how many problems it does not."""

    findings: tuple[Finding, ...]
    left_out: Mapping[str, Mapping[str, int]]


def group_problems(problems: Sequence[Problem]) -> Grouped:
    """The problems by cause, in the order of the first of each."""
    findings = _counted(_over_sheets(problems))
    of_file: Counter[str] = Counter()
    of_code: Counter[tuple[str, str]] = Counter()
    left_out: dict[str, Counter[str]] = {}
    kept: list[Finding] = []
    for finding in findings:
        path, code = finding.first.place.path, finding.first.code
        if of_file[path] < MOST_OF_A_FILE and of_code[path, code] < MOST_OF_A_CODE:
            of_file[path] += 1
            of_code[path, code] += 1
            kept.append(finding)
        else:
            left_out.setdefault(path, Counter())[code] += finding.number
    return Grouped(tuple(kept), left_out)


def _over_sheets(problems: Iterable[Problem]) -> list[Finding]:
    """One finding for what is said of several sheets; of several sizes the first is told."""
    groups: dict[Hashable, list[Problem]] = {}
    for problem in problems:
        groups.setdefault(_cause(problem), []).append(problem)
    return [
        Finding(group[0], len(group), tuple(dict.fromkeys(each.sheet for each in group if each.sheet)))
        for group in groups.values()
    ]


def _cause(problem: Problem) -> Hashable:
    if problem.sheet is None:
        return problem
    about = problem.text or _NUMBER.sub("#", problem.message)
    if problem.code == "SH-2":
        about = problem.message
    shared = problem.code, problem.severity, problem.locale, problem.is_in_work
    return *shared, problem.place, problem.step, about


def _counted(findings: Sequence[Finding]) -> list[Finding]:
    """Findings that a whole language shares become one with their number."""
    shared: dict[Hashable, list[Finding]] = {}
    for finding in findings:
        if finding.first.code in _COUNTED:
            shared.setdefault(_language_and_code(finding), []).append(finding)
    result: list[Finding] = []
    for finding in findings:
        alike = shared.get(_language_and_code(finding), [])
        if len(alike) < FEWEST_TO_COUNT:
            result.append(finding)
        elif finding is alike[0]:
            result.append(_summed(alike))
    return result


def _language_and_code(finding: Finding) -> Hashable:
    return finding.first.code, finding.first.locale, finding.first.is_in_work


def _summed(findings: Sequence[Finding]) -> Finding:
    first = findings[0].first
    characters = {point for each in findings for point in _CODE_POINT.findall(each.first.message)}
    counted = _COUNTED[first.code].format(
        number=len(findings), characters=len(characters), locale=first.locale or "the source"
    )
    sheets = dict.fromkeys(sheet for each in findings for sheet in each.sheets)
    return Finding(first, sum(each.number for each in findings), tuple(sheets), counted)
