"""The pages of one protocol in one language: overview, steps, all on one page, current sheet, trainer."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from signage.model.choices import PhaseTheme
from signage.model.library import Library, Protocol
from signage.model.sign_off import SignedBy
from signage.pages import address
from signage.pages.publication import KnownCopies, PageContext
from signage.pages.rendering import Page
from signage.pages.views import PhaseView, StepView, phase_views
from signage.pages.words import PageWords

PAGE_AGE_POLICY = "training-pages-days"
"""A value of policy.yaml: after so many days pages no longer say that a sheet is current."""

PROMPTS = ("page-ask-risk", "page-ask-watch", "page-ask-mend")
"""What a trainer asks about each critical step."""


@dataclass(frozen=True)
class SheetCheck:
    """What decides whether a sheet is current: its code, older codes, and the days between which to tell.

    ``standing`` is that of the protocol in the language, ``since_words`` the day since which its code is in
    force, if that is known. ``good`` and ``gone`` are numbers of copies, as codes bear them.
    """

    code: str
    earlier: str
    made_on: str
    made_on_words: str
    until: str
    until_words: str
    standing: str
    since_words: str
    good: str
    gone: str


def last_day(library: Library, protocol: Protocol, made_on: date) -> date:
    """The last day on which pages can tell: the review date, or earlier where the policy says so."""
    policy = library.policy.get(PAGE_AGE_POLICY)
    if policy is None or isinstance(policy.value, bool) or not isinstance(policy.value, int):
        return protocol.review_by
    return min(protocol.review_by, made_on + timedelta(days=policy.value))


def sheet_check(context: PageContext) -> SheetCheck:
    """The check for the sheets of a protocol."""
    publication, protocol, key = context.publication, context.protocol, (context.protocol.id, context.tag)
    made_on = publication.made_on
    until = last_day(publication.library, protocol, made_on)
    sheet, copies = publication.current.get(key), publication.copies.get(key, KnownCopies())
    return SheetCheck(
        code=context.revision,
        earlier=" ".join(publication.earlier_revisions.get(protocol.id, ())),
        made_on=made_on.isoformat(),
        made_on_words=context.words.date(made_on),
        until=until.isoformat(),
        until_words=context.words.date(until),
        standing=context.standing,
        since_words=context.words.date(sheet.since) if sheet is not None and sheet.since else "",
        good=_as_in_codes(copies.good),
        gone=_as_in_codes(copies.gone),
    )


def _as_in_codes(numbers: Iterable[str]) -> str:
    return " ".join(number.replace("-", "") for number in numbers)


def control_lines(context: PageContext) -> tuple[str, ...]:
    """What sheets carry at their foot: revision, owner, review date, and who signed."""
    words, protocol = context.words, context.protocol
    return (
        *signed_lines(context.words, context.signed),
        words.fixed("revision", code=_revision_words(context)),
        words.fixed("owner", role=words.content(f"{protocol.id}/owner")),
        words.fixed("review-by", date=words.date(protocol.review_by)),
    )


def signed_lines(words: PageWords, signed: SignedBy | None) -> tuple[str, ...]:
    """Who has signed the steps and the words, and when; one line where one role did both on one day."""
    if signed is None:
        return ()
    told = {"signed-by": signed.steps}
    if not signed.is_one:
        told = {"steps-signed-by": signed.steps, "words-signed-by": signed.words}
    lines = [
        words.fixed(text, role=words.code(each.role), date=words.date(each.on)) for text, each in told.items()
    ]
    return tuple(lines) if signed.is_verified else (*lines, words.fixed("role-declared"))


def protocol_page(
    context: PageContext,
    template: str,
    address_of: Callable[[str], str],
    values: Mapping[str, Any],
    up: tuple[str, str] | None = None,
    theme: PhaseTheme = PhaseTheme.PLAIN,
    title: str = "",
) -> Page:
    """A page of the protocol; ``address_of`` gives its address in each language. Goes up to the overview."""
    words, protocol = context.words, context.protocol
    name = f"{protocol.code} {context.title}"
    overview = address.protocol_page(context.tag, protocol)
    return Page(
        address=address_of(context.tag),
        template=template,
        words=words,
        title=f"{title} · {name}" if title else name,
        values={"code": protocol.code, "title": context.title, **values},
        languages={tag: address_of(tag) for tag in context.publication.languages_of(protocol)},
        up=up or (overview, f"{words.code(protocol.code)} {context.title}"),
        theme=theme,
        state=context.state,
        control=control_lines(context),
    )


def overview_page(context: PageContext, *, has_practice: bool) -> Page:
    """All phases with their steps: where the code on a poster leads."""
    words, protocol, tag = context.words, context.protocol, context.tag
    more = [(address.practice(tag, protocol), words.fixed("page-practice"))] if has_practice else []
    more += [
        (address.what_if(tag), words.fixed("page-what-if")),
        (address.current_sheet(tag, protocol), words.fixed("page-current")),
        (address.full_view(tag, protocol), words.fixed("page-full-view")),
    ]
    if has_trainer_notes(protocol):
        more.append((address.trainer_notes(tag, protocol), words.fixed("page-trainer")))
    return protocol_page(
        context,
        "protocol.html",
        lambda locale: address.protocol_page(locale, protocol),
        {"phases": phase_views(context), "more": more, "sheet": sheet_check(context)},
        up=(address.contents(tag), words.fixed("page-contents")),
    )


def step_pages(context: PageContext) -> Iterator[Page]:
    """One page a step: where the code on its card leads. Before the first and after the last: all steps."""
    overview = address.protocol_page(context.tag, context.protocol)
    for phase in phase_views(context):
        addresses = [overview, *(step.address for step in phase.steps), overview]
        for place, step in enumerate(phase.steps, start=1):
            yield _step_page(context, phase, step, place, addresses[place - 1], addresses[place + 1])


def _step_page(
    context: PageContext, phase: PhaseView, step: StepView, place: int, back: str, following: str
) -> Page:
    return protocol_page(
        context,
        "step.html",
        lambda locale: address.step_page(locale, context.protocol, step.step),
        {
            "phase": phase,
            "step": step,
            "place": place,
            "count": len(phase.steps),
            "back": back,
            "next": following,
            "sheet": sheet_check(context),
            "what_if": address.what_if(context.tag),
        },
        up=(address.protocol_page(context.tag, context.protocol), context.words.fixed("page-steps")),
        theme=phase.phase.theme,
        title=f"{step.number} {step.headline}",
    )


def full_view_page(context: PageContext) -> Page:
    """Everything on one page, to read at once or to print."""
    return protocol_page(
        context,
        "full_view.html",
        lambda locale: address.full_view(locale, context.protocol),
        {"phases": phase_views(context), "sources": context.protocol.sources},
        title=context.words.fixed("page-full-view"),
    )


def current_sheet_page(context: PageContext) -> Page:
    """Whether a sheet in the hand is current."""
    words = context.words
    return protocol_page(
        context,
        "current.html",
        lambda locale: address.current_sheet(locale, context.protocol),
        {
            "sheet": sheet_check(context),
            "revision": _revision_words(context),
            "review_by": words.date(context.protocol.review_by),
        },
        title=words.fixed("page-current"),
    )


def trainer_page(context: PageContext) -> Page:
    """Each critical step with its reason and what to ask about it."""
    phases = [(phase, [step for step in phase.steps if step.is_critical]) for phase in phase_views(context)]
    return protocol_page(
        context,
        "trainer.html",
        lambda locale: address.trainer_notes(locale, context.protocol),
        {
            "phases": [(phase, steps) for phase, steps in phases if steps],
            "prompts": [context.words.fixed(prompt) for prompt in PROMPTS],
        },
        title=context.words.fixed("page-trainer"),
    )


def has_trainer_notes(protocol: Protocol) -> bool:
    """Whether any step is critical."""
    return any(step.critical for step in protocol.steps)


def _revision_words(context: PageContext) -> str:
    """Such as ``r1 · K7M2``, the form that sheets carry."""
    return context.words.code(f"r{context.protocol.revision} · {context.revision}")
