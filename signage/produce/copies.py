"""Copies with numbers: each released sheet is counted, entered in the register, and then drawn."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from signage.control.register.store import NewCopy, Register
from signage.model.copy_number import ward_letters
from signage.model.mark import Mark
from signage.produce.draw import Job
from signage.produce.kept import KeptResults
from signage.produce.making import Making, NotKeptError
from signage.produce.workers import work_through
from signage.project import Project

NUMBERED = frozenset({Mark.NONE, Mark.DEMONSTRATION})
"""What may hang on a wall and so gets a number."""


def numbered_jobs(
    results: KeptResults,
    jobs: Sequence[Job],
    count: int,
    register: Register,
    on: date,
    workers: int | None = None,
) -> list[Job]:
    """The jobs, those of released sheets about a protocol with ``count`` numbers each from the register.

    A draft or a proof gets none, for it must not be mounted. Whether a sheet is one is seen with a number
    on it. The numbers are in the register before anything is drawn: one may stand on no sheet, never on two.
    """
    project = results.project
    marks = _marks(results, [_with_some_number(project, job) for job in jobs], workers)
    wanted = [
        (job, mark)
        for job, mark in zip(jobs, marks, strict=True)
        if mark in NUMBERED and job.request.protocol
    ]
    new = [each for job, mark in wanted for each in [_new_copy(project, job, mark)] * count]
    numbers = [copy.number for copy in register.add_copies(new, on, "")] if new else []
    given = {
        id(job): numbers[place * count : (place + 1) * count] for place, (job, _mark) in enumerate(wanted)
    }
    return [replace(job, request=replace(job.request, copies=tuple(given.get(id(job), ())))) for job in jobs]


def _with_some_number(project: Project, job: Job) -> Job:
    if not job.request.protocol:
        return job
    letters = ward_letters(project.library.protocols[job.request.protocol].ward)
    return replace(job, request=replace(job.request, copies=(f"{letters}-0000-A",)))


def _new_copy(project: Project, job: Job, mark: Mark) -> NewCopy:
    request = job.request
    protocol = project.library.protocols[request.protocol]
    return NewCopy(
        ward_letters(protocol.ward),
        f"{request.kind} {request.part}".strip(),
        protocol.id,
        request.locale,
        project.revision(protocol, request.locale),
        project.content_hash(protocol, request.locale),
        mark.value,
    )


def _marks(results: KeptResults, jobs: Sequence[Job], workers: int | None) -> list[Mark]:
    known = [_kept_mark(results, job) for job in jobs]
    missing = [job for job, mark in zip(jobs, known, strict=True) if mark is None]
    made = work_through(_mark, results, missing, workers)
    return [next(made) if mark is None else mark for mark in known]


def _kept_mark(results: KeptResults, job: Job) -> Mark | None:
    try:
        return _mark(results, job, may_compose=False)
    except NotKeptError:
        return None


def _mark(results: KeptResults, job: Job, *, may_compose: bool = True) -> Mark:
    """What a sheet would be printed as."""
    making = Making(results, job.request, may_compose=may_compose)
    return making.outcome(job.release, wants_proof=job.wants_proof).mark
