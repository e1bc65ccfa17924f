"""``signage audit pictures``: whether readers understand the pictures."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from signage.cli.application import (
    CONTENT,
    LOCALES,
    ContentOption,
    Format,
    FormatOption,
    LocalesOption,
    QuietOption,
)
from signage.cli.audit_application import audit_application
from signage.cli.kept import kept_of_user
from signage.cli.report import cell, print_json, say
from signage.ground.counting import counted
from signage.trials.result import DEFAULT_THRESHOLD, MOST_OPPOSITE, STRICT_THRESHOLD, Counting

if TYPE_CHECKING:
    from signage.trials.reading import Answer, Trial
    from signage.trials.result import PictureResult, TrialResult


@audit_application.command()
def pictures(
    file: Annotated[Path, typer.Argument(help="The filled table that was drawn beside a picture-trial.")],
    threshold: Annotated[
        float,
        typer.Option(
            min=0.01,
            max=1.0,
            help="Least share of readers who understand; 0.67 is quoted for ISO 9186 (from memory).",
        ),
    ] = DEFAULT_THRESHOLD,
    count: Annotated[
        Counting, typer.Option(help="strict: only correct answers count; half: partly counts one half.")
    ] = Counting.STRICT,
    content: ContentOption = CONTENT,
    locales: LocalesOption = LOCALES,
    form: FormatOption = Format.TEXT,
    quiet: QuietOption = False,
) -> int:
    """Score a comprehension trial of pictures; exit 1 when a picture fails."""
    from signage.project import open_project
    from signage.trials.reading import read_trial
    from signage.trials.result import judge

    project = open_project(content, locales, kept_of_user(is_fresh=False))
    trial = read_trial(file, project.pictures)
    critical = {
        step.picture
        for protocol in project.library.protocols.values()
        for step in protocol.steps
        if step.critical
    }
    result = judge(trial, critical, threshold, count)
    if form is Format.JSON:
        print_json(_as_json(file, trial, result, threshold, count))
    else:
        _print_result(trial, result, threshold, count, quiet)
    return int(bool(result.failed))


def _as_json(
    file: Path, trial: Trial, result: TrialResult, threshold: float, count: Counting
) -> dict[str, Any]:
    return {
        "file": file.as_posix(),
        "threshold": threshold,
        "count": count.value,
        "raters": list(trial.raters),
        "answers": result.answers,
        "kappa": None if result.kappa is None else round(result.kappa, 4),
        "pictures": [picture.as_json() for picture in result.pictures],
        "disagreements": [_difference(trial, answer) for answer in result.disagreements],
        "settled": result.settled,
        "failed": list(result.failed),
    }


def _difference(trial: Trial, answer: Answer) -> dict[str, Any]:
    return {
        "picture": answer.picture,
        "reader": answer.reader,
        "categories": {
            trial.raters[0]: answer.first.category.value,
            trial.raters[1]: answer.second.category.value,
        },
        "lines": [answer.first.place.line, answer.second.place.line],
    }


def _print_result(trial: Trial, result: TrialResult, threshold: float, count: Counting, quiet: bool) -> None:
    from rich.console import Console

    is_on_terminal = sys.stdout.isatty()
    console = Console(highlight=False, soft_wrap=True, width=None if is_on_terminal else 120)
    shown = [picture for picture in result.pictures if not quiet or picture.picture in result.failed]
    if shown:
        console.print(_table(shown, threshold))
    _print_differences(trial, result)
    if result.failed:
        say("\nThese pictures fail; draw them anew and test them again:")
        for picture in result.pictures:
            if picture.picture in result.failed:
                say(f"  {picture.picture}: {picture.reason}")
    if not quiet:
        _print_rules(trial, result, count)


def _print_rules(trial: Trial, result: TrialResult, count: Counting) -> None:
    """How the numbers came about, so that nobody takes them for more than they are."""
    first, second = trial.raters
    kappa = "is not defined: both used one category only"
    if result.kappa is not None:
        kappa = f"is {result.kappa:.2f}"
    say(f"\nCohen's kappa of the raters {first} and {second} {kappa} ({counted(result.answers, 'answer')}).")
    if trial.blank_rows:
        say(f"{counted(trial.blank_rows, 'row')} without reader and category left out.")
    rule = (
        "only correct answers" if count is Counting.STRICT else "correct answers and half of the partly ones"
    )
    say(f"Counted as understood: {rule}. The interval is Wilson's, 95 %.")
    say(
        "proved: the whole interval lies at or above the threshold. "
        "reached: only the share does; more readers are needed to prove it."
    )
    say(
        f"{DEFAULT_THRESHOLD:.2f} is quoted for ISO 9186 and ISO 3864, {STRICT_THRESHOLD:.2f} with at most "
        f"{MOST_OPPOSITE * 100:.0f} % opposite answers for ANSI Z535.3 (both from memory). "
        "Local policy decides."
    )
    if not result.failed:
        say("Other readers may read the pictures otherwise.")


def _table(pictures: list[PictureResult], threshold: float) -> Any:
    from rich.table import Table

    from signage.model.picture_trial import Category

    table = Table(box=None, pad_edge=False)
    for heading in ("Picture", "Share", "95 %", f"{threshold:.2f}", f"{STRICT_THRESHOLD:.2f}"):
        table.add_column(heading, no_wrap=True)
    table.add_column("Answers")
    for picture in pictures:
        low, high = picture.interval
        counts = [f"{number} {category}" for category in Category if (number := picture.counts[category])]
        table.add_row(
            cell(f"{picture.picture} (critical)" if picture.is_critical else picture.picture),
            f"{picture.share:.2f}",
            f"{low:.2f}–{high:.2f}",
            picture.verdict.value,
            picture.strict_verdict.value,
            f"{picture.answers}: {', '.join(counts)}",
        )
    return table


def _print_differences(trial: Trial, result: TrialResult) -> None:
    """The answers on which the raters differ, for the two to settle."""
    if not result.disagreements:
        return
    first, second = trial.raters
    differing = counted(len(result.disagreements), "answer")
    say(f"\nThe raters differ on {differing}. The worse rating counts until a row of")
    say("the rater 'agreed' settles it:")
    for answer in result.disagreements:
        lines = f"lines {answer.first.place.line} and {answer.second.place.line}"
        say(
            f"  {answer.picture}, reader {answer.reader} ({lines}): {first} says {answer.first.category}, "
            f"{second} says {answer.second.category}"
        )
