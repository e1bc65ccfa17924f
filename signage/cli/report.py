"""How findings look on the terminal and as JSON."""

from __future__ import annotations

import json
import sys
from collections import Counter
from collections.abc import Sequence
from typing import Any

from signage.ground.problem import Problem, Severity


def print_json(value: Any) -> None:
    """One object on standard output and nothing else."""
    sys.stdout.write(json.dumps(value, ensure_ascii=False, indent=2) + "\n")


def say_error(message: str) -> None:
    """A message for the person, on standard error."""
    sys.stderr.write(message.rstrip() + "\n")


def counts_of(problems: Sequence[Problem]) -> dict[str, int]:
    """How many problems of each severity; those of languages in work are not counted."""
    counted = Counter(problem.severity for problem in problems if not problem.is_in_work)
    return {severity.value: counted.get(severity, 0) for severity in Severity}


def problems_json(problems: Sequence[Problem]) -> dict[str, Any]:
    """The JSON of ``check``."""
    return {"problems": [problem.as_json() for problem in problems], "counts": counts_of(problems)}


def status_of(problems: Sequence[Problem]) -> int:
    """1 when something blocks printing or approval (S1, S2); warnings (S3) alone leave 0.

    Faults of a language in work block nothing: it is not printed yet.
    """
    return int(any(problem.severity is not Severity.S3 and not problem.is_in_work for problem in problems))


def print_problems(problems: Sequence[Problem], *, is_json: bool, heading: str = "") -> None:
    """All problems in a stable order: files first by name and line, then sheets."""
    if is_json:
        print_json(problems_json(problems))
        return
    from rich.console import Console
    from rich.text import Text

    console = Console(stderr=True, highlight=False, soft_wrap=True)
    if heading:
        console.print(Text(heading, style="bold"))
    for problem in problems:
        console.print(_line(problem))
        if problem.hint:
            console.print(Text(f"    {problem.hint}", style="dim"))
    counts = counts_of(problems)
    parts = [f"{number} {severity}" for severity, number in counts.items() if number]
    in_work = sum(problem.is_in_work for problem in problems)
    total = ", ".join([*parts, f"{in_work} of languages in work"] if in_work else parts)
    if problems:
        console.print(f"{len(problems)} found ({total}). 'signage explain CODE' tells more about a code.")


def _line(problem: Problem) -> Any:
    from rich.text import Text

    style = {Severity.S1: "bold red", Severity.S2: "yellow", Severity.S3: "cyan"}[problem.severity]
    where = str(problem.place) if problem.place.path else ""
    context = " · ".join(
        part
        for part in (
            f"{problem.locale}, in work" if problem.is_in_work else problem.locale,
            problem.sheet,
            f"step {problem.step}" if problem.step else "",
        )
        if part
    )
    line = Text()
    if where:
        line.append(f"{where}: ", style="bold")
    line.append(f"{problem.severity.value} {problem.code} ", style=style)
    line.append(problem.message)
    if context:
        line.append(f" [{context}]", style="dim")
    return line
