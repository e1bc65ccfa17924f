"""Whether the codes of sheets lead anywhere: the training address, and a page behind every code."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date

from signage.compose.sheet_kind import CodeTarget
from signage.ground.errors import RefusedError
from signage.ground.problem import Problem
from signage.pages.link_check import Payload, link_problems
from signage.pages.planned_site import PlannedSite
from signage.pages.training_address import reachable_problem
from signage.produce.publish import publication_of
from signage.produce.requests import SheetRequest
from signage.project import Project


def training_problems(project: Project, requests: Sequence[SheetRequest], today: date) -> list[Problem]:
    """A warning where no phone can reach the training address, and an error for each code without its page.

    The codes are those of the requested sheets; neither sheets nor pages are drawn for it.
    """
    library = project.library
    warning = reachable_problem(library.training_address, library.at("training_address"))
    problems = [] if warning is None else [warning]
    payloads = tuple(payloads_for(project, requests))
    if payloads:
        locales = tuple(dict.fromkeys(request.locale for request in requests))
        problems += link_problems(payloads, _planned_files(project, locales, today), library.training_address)
    return problems


def payloads_for(project: Project, requests: Iterable[SheetRequest]) -> Iterator[Payload]:
    """What the codes of the requested sheets say: of a card its step, of other sheets the protocol."""
    kinds: dict[tuple[str, str], dict[str, CodeTarget]] = {}
    for request in requests:
        code = project.kinds.of(request.kind).code
        if request.protocol and code is not CodeTarget.NONE:
            kinds.setdefault((request.protocol, request.locale), {})[request.kind] = code
    for (name, locale), found in kinds.items():
        protocol = project.library.protocols[name]
        context = project.context(protocol, locale)
        whole = [kind for kind, code in found.items() if code is CodeTarget.PROTOCOL]
        by_step = [kind for kind, code in found.items() if code is CodeTarget.STEP]
        if whole:
            yield Payload(context.training_link(), ", ".join(whole), locale)
        for step in protocol.steps if by_step else ():
            yield Payload(context.training_link(step), ", ".join(by_step), locale)


def _planned_files(project: Project, locales: Sequence[str], today: date) -> Mapping[str, bytes]:
    """The files that 'signage pages' would make in these locales; none where it would refuse to make any.

    Other locales are left alone: a fault of their words is told elsewhere and must not hide these.
    """
    try:
        publication, _ = publication_of(project, today, locales)
    except RefusedError:
        return {}
    return PlannedSite(publication)
