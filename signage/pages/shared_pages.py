"""The pages that belong to no one protocol: languages, contents, what to do when something goes wrong."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from urllib.parse import urlsplit

from signage.model.choices import ActionVerb, PhaseTheme, RuleKind
from signage.model.library import Library, Phase, Protocol, Step
from signage.model.messages import pointer_context
from signage.pages import address
from signage.pages.picture import PictureKey
from signage.pages.publication import PageContext, PageState, Publication
from signage.pages.rendering import Page
from signage.pages.views import TECHNIQUE, PhaseView, phase_view
from signage.pages.words import PageWords

_IN_ORDER = frozenset({"steps", TECHNIQUE})
"""Layouts of phases that are done from first to last; others are branches, shown as what-if cards."""


@dataclass(frozen=True)
class LanguageChoice:
    """A language to choose, with a line of its script to recognise it by."""

    words: PageWords
    address: str
    sample: str


@dataclass(frozen=True)
class ContentsEntry:
    """A protocol in the list of protocols."""

    address: str
    code: str
    title: str
    phases: str
    theme: PhaseTheme
    picture: PictureKey


@dataclass(frozen=True)
class StopRule:
    """The sentence of a key box that tells people to stop."""

    word: str
    text: str
    where: str


@dataclass(frozen=True)
class LocalDocument:
    """An event and the local document that says what to do, with the protocols that point to it."""

    text: str
    where: str


@dataclass(frozen=True)
class WhatIfCard:
    """A phase that is done only when something has happened."""

    id: str
    title: str
    phase: PhaseView


def is_what_if(library: Library, protocol: Protocol, phase: Phase) -> bool:
    """Whether the phase answers to an event.

    Its layout says so, or a hazard of any protocol leads to it, or the protocol branches into another one:
    then each of its phases is a way out of that one. A step with a condition makes no such phase: it is one
    of the steps, done only then.
    """
    if phase.layout not in _IN_ORDER or _answers_a_hazard(library, protocol, phase):
        return True
    return any(action.verb is ActionVerb.BRANCH for step in protocol.steps for action in step.actions)


def _answers_a_hazard(library: Library, protocol: Protocol, phase: Phase) -> bool:
    names = {protocol.id, f"{protocol.id}/{phase.id}"}
    return any(
        hazard.branch in names or (other.id == protocol.id and hazard.branch == phase.id)
        for other in library.protocols.values()
        for hazard in other.hazards.values()
    )


def language_choices(publication: Publication) -> list[LanguageChoice]:
    """The languages in the order of the publication."""
    return [
        LanguageChoice(words, address.contents(tag), words.content("library/name"))
        for tag, words in publication.words.items()
    ]


def languages_page(publication: Publication) -> Page:
    """The first page of the site, in no language more than it must."""
    source = _first_words(publication)
    return Page(
        address=address.LANGUAGES,
        template="languages.html",
        words=source,
        title=source.content("library/name"),
        values={"title": source.content("library/name"), "choices": language_choices(publication)},
        languages={},
        state=_state_in(publication, publication.words.values()),
    )


def not_found_page(publication: Publication) -> Page:
    """What a server shows for an address that has no page, in every language."""
    source = _first_words(publication)
    root = urlsplit(publication.library.training_address).path.rstrip("/") + "/"
    return Page(
        address=address.LANGUAGES,
        template="not_found.html",
        words=source,
        title=source.fixed("page-address"),
        values={"choices": language_choices(publication)},
        languages={},
        root=root,
        state=_state_in(publication, publication.words.values()),
    )


def contents_page(publication: Publication, words: PageWords) -> Page:
    """All protocols in one language."""
    entries = [_entry(publication, words, protocol) for protocol in publication.protocols(words.tag)]
    return Page(
        address=address.contents(words.tag),
        template="contents.html",
        words=words,
        title=words.content("library/name"),
        values={
            "title": words.content("library/name"),
            "entries": entries,
            "what_if": address.what_if(words.tag),
        },
        languages={tag: address.contents(tag) for tag in publication.words},
        state=_state_in(publication, [words]),
        up=(address.LANGUAGES, words.fixed("page-languages")),
    )


def _entry(publication: Publication, words: PageWords, protocol: Protocol) -> ContentsEntry:
    titles = [words.content(f"{protocol.id}/phase/{phase.id}/title") for phase in protocol.phases]
    phase = protocol.phases[-1]
    step = _telling_step(phase)
    return ContentsEntry(
        address=address.protocol_page(words.tag, protocol),
        code=protocol.code,
        title=words.content(f"{protocol.id}/title"),
        phases=words.wording.join(titles),
        theme=phase.theme,
        picture=publication.pictures.key(step, phase, words.is_right_to_left),
    )


def _telling_step(phase: Phase) -> Step:
    """A step whose picture stands for the phase: the first that puts something on or takes it off."""
    dressing = (step for step in phase.steps if step.action.verb in {ActionVerb.DON, ActionVerb.DOFF})
    return next(dressing, phase.steps[len(phase.steps) // 2])


def local_documents(words: PageWords, protocols: Iterable[Protocol]) -> list[LocalDocument]:
    """The lines that point to local documents, each once."""
    where: dict[str, list[str]] = {}
    for protocol in protocols:
        name = f"{words.code(protocol.code)} {words.content(f'{protocol.id}/title')}"
        for hazard in protocol.pointers:
            where.setdefault(words.content(pointer_context(protocol, hazard)), []).append(name)
    return [LocalDocument(text, words.wording.join(names)) for text, names in where.items()]


def what_if_page(publication: Publication, words: PageWords) -> Page:
    """Every stop rule, one card for each phase that answers to an event, and where to look for others."""
    rules: list[StopRule] = []
    cards: list[WhatIfCard] = []
    every = (PageContext(publication, protocol, words) for protocol in publication.protocols(words.tag))
    contexts = [each for each in every if each.state is not PageState.WITHDRAWN]
    for context in contexts:
        for phase in context.protocol.phases:
            view = phase_view(context, phase)
            where = f"{words.code(context.protocol.code)} {context.title} · {view.title}"
            if is_what_if(publication.library, context.protocol, phase):
                card = f"{context.protocol.code.lower()}-{phase.id}"
                cards.append(WhatIfCard(card, context.title, view))
            elif view.rule and phase.rule_kind is RuleKind.STOP:
                rules.append(StopRule(view.rule_word, view.rule, where))
    return Page(
        address=address.what_if(words.tag),
        template="what_if.html",
        words=words,
        title=words.fixed("page-what-if"),
        values={
            "rules": rules,
            "cards": cards,
            "documents": local_documents(words, [context.protocol for context in contexts]),
        },
        languages={tag: address.what_if(tag) for tag in publication.words},
        up=(address.contents(words.tag), words.fixed("page-contents")),
        state=_state_of_all(contexts),
    )


def _state_in(publication: Publication, languages: Iterable[PageWords]) -> PageState:
    """The state of a page that leads to every protocol in some languages."""
    return _state_of_all(
        PageContext(publication, protocol, words)
        for words in languages
        for protocol in publication.protocols(words.tag)
    )


def _state_of_all(contexts: Iterable[PageContext]) -> PageState:
    """The gravest state of several protocols that a page shows at once.

    That all are approved goes unsaid; what was withdrawn says so on its own pages.
    """
    states = {context.state for context in contexts} - {PageState.WITHDRAWN}
    found = next((state for state in PageState if state in states), PageState.DRAFT)
    return PageState.NONE if found is PageState.APPROVED else found


def _first_words(publication: Publication) -> PageWords:
    source = publication.library.source_locale
    return publication.words.get(source) or next(iter(publication.words.values()))
