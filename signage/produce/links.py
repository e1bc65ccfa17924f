"""Whether the codes of sheets lead anywhere: the training address, and a page behind every code."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import date

from signage.compose.sheet_kind import CodeTarget
from signage.ground.errors import RefusedError
from signage.ground.problem import Problem
from signage.pages.link_check import Payload, link_problems
from signage.pages.planned_site import PlannedSite
from signage.pages.publication import Publication
from signage.pages.training_address import reachable_problem
from signage.produce.kept import KeptResults
from signage.produce.publish import publication_of
from signage.produce.requests import SheetRequest
from signage.project import Project


def training_problems(
    project: Project, requests: Sequence[SheetRequest], today: date, results: KeptResults | None = None
) -> Iterator[Problem]:
    """A warning where no phone can reach the training address, and an error for each code without its page.

    The codes are those of the requested sheets; neither sheets nor pages are drawn for it.
    """
    library = project.library
    results = results or KeptResults(project)
    warning = reachable_problem(library.training_address, library.at("training_address"))
    if warning is not None:
        yield warning
    codes: dict[str, list[Payload]] = {}
    for payload in payloads_for(project, requests):
        codes.setdefault(payload.locale, []).append(payload)
    locales = tuple(dict.fromkeys(request.locale for request in requests))
    publication = _planned(project, locales, today, results) if codes else None
    for tag, payloads in codes.items():
        yield from _dead_links(publication, tag, payloads, library.training_address, results)


def _dead_links(
    publication: Publication | None,
    tag: str,
    payloads: Sequence[Payload],
    training_address: str,
    results: KeptResults,
) -> Iterable[Problem]:
    """The codes of a language that lead nowhere: all, where it has no pages."""
    if publication is None or tag not in publication.words:
        return link_problems(payloads, {}, training_address)
    part = publication.in_language(tag)
    codes = [part for payload in payloads for part in (payload.text, payload.sheet)]
    return results.link_problems(
        codes, part, lambda: link_problems(payloads, PlannedSite(part, tag), training_address)
    )


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


def _planned(
    project: Project, locales: Sequence[str], today: date, results: KeptResults
) -> Publication | None:
    """What 'signage pages' would make in these locales; None where it would refuse to make any.

    Other locales are left alone: a fault of their words is told elsewhere and must not hide these.
    """
    try:
        publication, _ = publication_of(project, today, locales, results)
    except RefusedError:
        return None
    return publication
