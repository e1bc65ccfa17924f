"""How findings look on the terminal and as JSON.

Findings are results: they go to standard output. Errors and progress go to standard error. Whatever a
person or a file has written passes ``printable`` first, so that no terminal obeys it, and is never read as
markup.
"""

from __future__ import annotations

import json
import sys
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from typing import Any

from signage.check.grouping import Finding, Grouped, group_problems
from signage.ground.counting import counted
from signage.ground.problem import Problem, Severity
from signage.ground.quotation import printable, shortened

LONGEST_MESSAGE = 400
"""Characters of a message that are told to people."""

_SHEETS_NAMED = 3
_CONTROLS = {code: f"\\u{code:04x}" for code in (*range(0x7F, 0xA0), *range(0xD800, 0xE000))}
_STYLE = {Severity.S1: "bold red", Severity.S2: "yellow", Severity.S3: "cyan"}


def print_json(value: Any) -> None:
    """One object on standard output and nothing else; in ASCII where the output cannot hold UTF-8."""
    is_unicode = "utf" in (sys.stdout.encoding or "utf-8").lower()
    text = json.dumps(value, ensure_ascii=not is_unicode, indent=2)
    sys.stdout.write(text.translate(_CONTROLS) + "\n")


def say(message: str = "") -> None:
    """A result for the person, on standard output."""
    sys.stdout.write(printable(message) + "\n")


def say_error(message: str) -> None:
    """An error or a note of progress for the person, on standard error."""
    sys.stderr.write(printable(message.rstrip()) + "\n")


def cell(value: object, style: str = "") -> Any:
    """The cell of a table: never markup, nothing that a terminal obeys."""
    from rich.text import Text

    return Text(printable(str(value), is_line=True), style=style)


def progress_bar(*, is_wanted: bool, description: str) -> Callable[..., Iterable[Any]] | None:
    """A bar on standard error while something long runs; None where nobody would see it."""
    if not (is_wanted and sys.stderr.isatty()):
        return None
    from rich.console import Console
    from rich.progress import track

    def shown(items: Iterable[Any], total: int, description: str = description) -> Iterable[Any]:
        return track(items, description=description, total=total, console=Console(stderr=True))

    return shown


def counts_of(problems: Sequence[Problem]) -> dict[str, int]:
    """How many problems of each severity; those of languages in work are not counted."""
    counted = Counter(problem.severity for problem in problems if not problem.is_in_work)
    return {severity.value: counted.get(severity, 0) for severity in Severity}


def problems_json(problems: Sequence[Problem]) -> dict[str, Any]:
    """The JSON of ``check``, and of input that could not be read: every problem."""
    return {"problems": [problem.as_json() for problem in problems], "counts": counts_of(problems)}


def status_of(problems: Sequence[Problem]) -> int:
    """1 when something blocks printing or approval (S1, S2); warnings (S3) alone leave 0.

    Faults of a language in work block nothing: it is not printed yet.
    """
    return int(any(problem.severity is not Severity.S3 and not problem.is_in_work for problem in problems))


def print_problems(
    problems: Sequence[Problem], *, heading: str = "", is_error: bool = False, is_whole: bool = False
) -> None:
    """The problems for a person: those of one cause together, unless the report is to be whole.

    ``is_error`` sends them to standard error: input that could not be read is no finding.
    """
    from rich.console import Console
    from rich.text import Text

    console = Console(stderr=is_error, highlight=False, soft_wrap=True)
    if heading:
        console.print(Text(heading, style="bold"))
    if is_whole:
        grouped = Grouped(tuple(Finding(problem, 1) for problem in problems), {})
    else:
        grouped = group_problems(problems)
    for finding in grouped.findings:
        console.print(_line(finding))
        if finding.first.hint:
            console.print(Text(f"    {printable(finding.first.hint, is_line=True)}", style="dim"))
    for path, numbers in grouped.left_out.items():
        listed = ", ".join(f"{number} {code}" for code, number in numbers.items())
        total = sum(numbers.values())
        console.print(
            cell(f"{path or 'Elsewhere'}: {counted(total, 'more is', 'more are')} not told here ({listed}).")
        )
    if problems:
        console.print(Text(_total(problems, grouped.findings)))


def _total(problems: Sequence[Problem], findings: Sequence[Finding]) -> str:
    counts = counts_of(problems)
    parts = [f"{number} {severity}" for severity, number in counts.items() if number]
    in_work = sum(problem.is_in_work for problem in problems)
    total = ", ".join([*parts, f"{in_work} of languages in work"] if in_work else parts)
    lines = f", told in {len(findings)}" if len(findings) < len(problems) else ""
    every = "; 'signage check --all' tells each" if lines else ""
    return f"{len(problems)} found ({total}){lines}{every}. 'signage explain CODE' tells more about a code."


def _line(finding: Finding) -> Any:
    from rich.text import Text

    problem = finding.first
    where = str(problem.place) if problem.place.path else ""
    parts = (
        f"{problem.locale}, in work" if problem.is_in_work else problem.locale,
        f"step {problem.step}" if problem.step else "",
        _sheets(finding),
    )
    context = " · ".join(part for part in parts if part)
    line = Text()
    if where:
        line.append(f"{printable(where, is_line=True)}: ", style="bold")
    line.append(f"{problem.severity.value} {problem.code} ", style=_STYLE[problem.severity])
    line.append(printable(shortened(finding.sentence, LONGEST_MESSAGE), is_line=True))
    if context:
        line.append(f" [{printable(context, is_line=True)}]", style="dim")
    return line


def _sheets(finding: Finding) -> str:
    sheets = finding.sheets or ((finding.first.sheet,) if finding.first.sheet else ())
    if len(sheets) <= 1:
        return "".join(sheets)
    named = ", ".join(sheets[:_SHEETS_NAMED])
    return f"{len(sheets)} sheets: {named}{', …' if len(sheets) > _SHEETS_NAMED else ''}"
