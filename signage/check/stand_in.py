"""What a rule finds on a sheet in a stand-in language: a warning before a translator meets the fault."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from signage.ground.problem import Problem, Severity

ABOUT = {
    "en-XA": "words 40 % longer than the source",
    "ar-XB": "words from right to left in Arabic letters",
}
"""What each stand-in language tries out."""

_TOO_LONG = frozenset({"SH-0", "SH-1"})
"""No text of a real language need be as long: what does not fit is a note, never a fault. It lies on other
ink too, which is not told again."""

_HINT = (
    "No text is wrong yet: a real translation of this length meets it. Leave more room: fewer words in the "
    "source, a larger paper, or a budget for the translator."
)


def stand_in_problems(found: Iterable[Problem]) -> Iterator[Problem]:
    """One finding a rule and sheet, at most S2; what is only a remark on a real sheet is none here."""
    first: dict[tuple[str, str | None], list[Problem]] = {}
    for problem in found:
        if problem.severity is not Severity.S3:
            first.setdefault((problem.code, problem.sheet), []).append(problem)
    too_long = {sheet for code, sheet in first if code in _TOO_LONG}
    for (code, sheet), problems in first.items():
        if code in _TOO_LONG or sheet not in too_long:
            yield _told(problems)


def _told(problems: Sequence[Problem]) -> Problem:
    problem = problems[0]
    more = f" ({len(problems)} such on this sheet)" if len(problems) > 1 else ""
    about = ABOUT[problem.locale or ""]
    return replace(
        problem,
        severity=Severity.S3 if problem.code in _TOO_LONG else Severity.S2,
        message=f"With {about} (stand-in {problem.locale}): {problem.message}{more}",
        hint=_HINT,
        text=None,
    )
