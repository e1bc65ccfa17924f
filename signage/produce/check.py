"""Everything is looked at: words, orders, pictures, then every sheet in every language in use."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

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
from signage.produce.links import training_problems
from signage.produce.release import Releases
from signage.produce.requests import SheetRequest, Wanted, compose_request, context_of, requests_for
from signage.produce.workers import work_through
from signage.project import Project
from signage.words.coverage import coverage_problems
from signage.words.standin import STAND_INS


@dataclass(frozen=True)
class LookedAt:
    """How much a check has seen."""

    messages: int
    locales: int
    sheets: int
    pictures: int


Progress = Callable[..., Iterable[Any]]


def check_project(
    project: Project, today: date, progress: Progress | None = None
) -> tuple[list[Problem], LookedAt]:
    """All problems of all stages on a day, sorted; a language that lacks words or a font is not composed."""
    words = coverage_problems(project.library, project.messages, project.locales, project.fonts)
    releases = Releases(project, today)
    wanted = requests_for(project, Wanted())
    unseen = {problem.locale for problem in words if problem.code == "WD-39"}
    requests = [
        each
        for each in wanted
        if each.locale not in unseen and releases.of(each.protocol, each.locale).is_worded
    ]
    locales = {request.locale for request in requests}
    pictures = project.pictures_in_use
    tried = stand_in_requests(project)
    drawn = _check_all(project, (*pictures, *requests, *tried), progress)
    training = training_problems(
        project,
        [
            each
            for each in requests
            if releases.of(each.protocol, each.locale).decision.mark is not Mark.REFUSED
        ],
        today,
    )
    content = releases.content_problems
    looked_at = [*words, *content, *training, *drawn]
    excused = excuse(looked_at, beyond_rehearsal(project.library.waivers), today)
    found = {*excused.standing, *excused.faults, *check_orders(project, today)}
    problems = sorted(found, key=_order)
    return problems, LookedAt(len(project.messages), len(locales), len(requests) + len(tried), len(pictures))


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
    found = _check_sheet(project, request)
    return stand_in_problems(found) if request.locale in STAND_INS else found


def _check_sheet(project: Project, request: SheetRequest) -> list[Problem]:
    protocol = project.library.protocols.get(request.protocol)
    try:
        sheet = compose_request(project, request)
    except RefusedError as refusal:
        name = " ".join(part for part in (request.kind, request.part, request.paper) if part)
        return list(refusal_problems(refusal, project.wording(request.locale), protocol, name))
    subject = SheetSubject(sheet, context_of(project, request), project.kinds.of(sheet.kind))
    return [problem for rule in all_sheet_rules() for problem in rule.find(subject)]


def _check_all(
    project: Project, jobs: Sequence[SheetRequest | str], progress: Progress | None
) -> list[Problem]:
    """Pictures by their names, and sheets."""
    return _gather(work_through(_check, project, jobs), len(jobs), progress)


def _check(project: Project, job: SheetRequest | str) -> list[Problem]:
    return check_picture(project, job) if isinstance(job, str) else check_request(project, job)


def _gather(found: Iterable[list[Problem]], total: int, progress: Progress | None) -> list[Problem]:
    if progress is not None:
        found = progress(found, total=total)
    return [problem for problems in found for problem in problems]


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
