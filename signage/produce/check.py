"""Everything is looked at: words, orders, pictures, then every sheet in every language in use."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, TypeAlias

from signage.check.picture_rule import picture_subject
from signage.check.refused_sheet import refusal_problems
from signage.check.registry import all_picture_rules, all_sheet_rules
from signage.check.rule import SheetSubject
from signage.check.stand_in import stand_in_problems
from signage.compose.papers import paper_of
from signage.control.waiving import beyond_rehearsal, excuse
from signage.ground.errors import RefusedError
from signage.ground.problem import Problem
from signage.model.mark import Mark
from signage.produce.kept import KeptResults
from signage.produce.links import training_problems
from signage.produce.release import Releases
from signage.produce.requests import SheetRequest, Wanted, compose_request, context_of, requests_for
from signage.produce.workers import work_through
from signage.project import Project
from signage.words.coverage import counted_problems
from signage.words.standin import STAND_INS


@dataclass(frozen=True)
class LookedAt:
    """How much a check has seen."""

    messages: int
    locales: int
    sheets: int
    pictures: int
    anew: int
    """Sheets that no earlier run has looked at as they are."""


Progress = Callable[..., Iterable[Any]]
Job: TypeAlias = SheetRequest | str
"""A sheet, or a picture by its name."""


def check_project(
    project: Project, today: date, progress: Progress | None = None, results: KeptResults | None = None
) -> tuple[list[Problem], LookedAt]:
    """All problems of all stages on a day, sorted; a language that lacks words or a font is not composed."""
    results = results or KeptResults(project)
    releases = Releases(project, today, results)
    words = list(counted_problems(project.library, project.messages, releases.words_problems))
    wanted = requests_for(project, Wanted())
    requests = [each for each in wanted if releases.of(each.protocol, each.locale).is_worded]
    locales = {request.locale for request in requests}
    pictures = project.pictures_in_use
    tried = stand_in_requests(project)
    drawn = look_at_all(results, (*pictures, *requests, *tried), progress)
    training = training_problems(
        project,
        [
            each
            for each in requests
            if releases.of(each.protocol, each.locale).decision.mark is not Mark.REFUSED
        ],
        today,
        results,
    )
    problems = standing_problems(project, today, releases, [*words, *training, *drawn.problems])
    sheets = len(requests) + len(tried)
    seen = LookedAt(len(project.messages), len(locales), sheets, len(pictures), drawn.anew)
    return problems, seen


def standing_problems(
    project: Project, today: date, releases: Releases, looked_at: Iterable[Problem]
) -> list[Problem]:
    """What was looked at, content and orders, without what waivers of the day excuse; sorted."""
    found = [*looked_at, *releases.content_problems]
    excused = excuse(found, beyond_rehearsal(project.library.waivers), today)
    return sorted({*excused.standing, *excused.faults, *check_orders(project, today)}, key=_order)


def stand_in_requests(project: Project) -> tuple[SheetRequest, ...]:
    """Every kind of sheet of every protocol in every stand-in language, on the paper with least room."""
    smallest: dict[tuple[str, str, str, str], SheetRequest] = {}
    for each in requests_for(project, Wanted(locales=tuple(STAND_INS))):
        key = (each.locale, each.protocol, each.kind, each.part)
        known = smallest.get(key)
        if known is None or _room(project, each) < _room(project, known):
            smallest[key] = each
    return tuple(smallest.values())


def _room(project: Project, request: SheetRequest) -> float:
    """Square millimetres; cards on their own have as much as cards on a sheet."""
    paper = paper_of(request.paper)
    return (
        math.inf if paper.name in project.kinds.of(request.kind).papers.single else paper.width * paper.height
    )


def check_orders(project: Project, today: date) -> list[Problem]:
    """The findings of the rehearsal of every protocol that nobody has waived, and faults of waivers."""
    return [
        problem
        for protocol in project.library.protocols.values()
        for problem in project.report(protocol, today).problems
    ]


def check_picture(project: Project, name: str) -> list[Problem]:
    """The findings of all picture rules on one picture among those in use."""
    subject = picture_subject(project.picture_set, name, project.pictures_in_use)
    return [problem for rule in all_picture_rules() for problem in rule.find(subject)]


def check_request(project: Project, request: SheetRequest) -> list[Problem]:
    """The findings of all sheet rules on one document."""
    return _told(request, _look(KeptResults(project), request))


def _check_sheet(project: Project, request: SheetRequest) -> list[Problem]:
    protocol = project.library.protocols.get(request.protocol)
    try:
        sheet = compose_request(project, request)
    except RefusedError as refusal:
        name = " ".join(part for part in (request.kind, request.part, request.paper) if part)
        return list(refusal_problems(refusal, project.wording(request.locale), protocol, name))
    subject = SheetSubject(sheet, context_of(project, request), project.kinds.of(sheet.kind))
    return [problem for rule in all_sheet_rules() for problem in rule.find(subject)]


@dataclass(frozen=True)
class Looked:
    """What was found on pictures and sheets; ``anew`` of the sheets were composed for it."""

    problems: tuple[Problem, ...]
    anew: int


def look_at_all(results: KeptResults, jobs: Sequence[Job], progress: Progress | None) -> Looked:
    """Pictures by their names, and sheets: what no earlier run has looked at, on all processors."""
    known = [_known(results, job) for job in jobs]
    missing = [job for job, found in zip(jobs, known, strict=True) if found is None]
    looked: Iterable[Sequence[Problem]] = work_through(_look, results, missing)
    if progress is not None:
        looked = progress(looked, total=len(missing))
    made = iter(looked)
    found = (next(made) if each is None else each for each in known)
    problems = tuple(problem for job, each in zip(jobs, found, strict=True) for problem in _told(job, each))
    return Looked(problems, sum(isinstance(job, SheetRequest) for job in missing))


def _known(results: KeptResults, job: Job) -> Sequence[Problem] | None:
    return results.picture_problems(job) if isinstance(job, str) else results.sheet_problems(job)


def _look(results: KeptResults, job: Job) -> Sequence[Problem]:
    if isinstance(job, str):
        found = check_picture(results.project, job)
        results.keep_picture_problems(job, found)
    else:
        found = _check_sheet(results.project, job)
        results.keep_sheet_problems(job, found)
    return found


def _told(job: Job, found: Sequence[Problem]) -> list[Problem]:
    """What is found in a stand-in language is a warning before a translator meets it."""
    is_tried = isinstance(job, SheetRequest) and job.locale in STAND_INS
    return list(stand_in_problems(found) if is_tried else found)


def _order(problem: Problem) -> tuple[str, ...]:
    place = problem.place
    return (
        problem.severity.value,
        place.path,
        f"{place.line:09}",
        f"{place.column:09}",
        problem.code,
        problem.locale or "",
        problem.sheet or "",
        problem.message,
    )
