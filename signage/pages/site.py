"""The whole site as files: every page in every language, pictures, stylesheet, script."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from importlib import resources

from signage.model.library import Protocol
from signage.pages import address
from signage.pages.container_sign import pattern_names, pattern_tile
from signage.pages.embedded_font import letter_files, own_letters
from signage.pages.look import stylesheet
from signage.pages.practice.pages import Exercise, plan_practice, practice_pages
from signage.pages.practice.reasons import Examiner
from signage.pages.protocol_pages import (
    current_sheet_page,
    full_view_page,
    has_trainer_notes,
    overview_page,
    step_pages,
    trainer_page,
)
from signage.pages.publication import PageContext, Publication
from signage.pages.rendering import Page, render_page
from signage.pages.shared_pages import (
    contents_page,
    languages_page,
    not_found_page,
    what_if_page,
)
from signage.pages.words import PageWords
from signage.text.metrics import metrics_of

_NOT_TEXT = re.compile(r"<svg.*?</svg>", re.DOTALL)


@dataclass(frozen=True)
class Site:
    """A built site: files by path, and how many pages it has."""

    files: Mapping[str, bytes]
    pages: int


Files = Mapping[str, bytes]
Once = Callable[[Sequence[str], Publication, Callable[[], Files]], Files]
"""Gives the files that the function makes from a publication, or the same ones from an earlier time.

The strings say which files of the publication they are.
"""


def always(_about: Sequence[str], _publication: Publication, make: Callable[[], Files]) -> Files:
    """The files, made anew."""
    return make()


def build_site(publication: Publication, examiner: Examiner, once: Once = always) -> Site:
    """All files of the site. The same publication gives the same bytes.

    ``examiner`` judges the orders of exercises, ``once`` may know the pages of a language from an earlier
    time. Raises MissingMessageError where a language lacks a text.
    """
    plans = _Plans(publication, examiner)
    files = dict(_written(publication, [languages_page(publication)]))
    for tag in publication.words:
        part = publication.in_language(tag)
        files.update(once(("pages", tag), part, partial(_pages_in_language, part, part.words[tag], plans)))
    pages = len(files)
    files[address.NOT_FOUND_FILE] = render_page(publication, not_found_page(publication))
    files.update(_letters(publication, files, once))
    files.update(_assets(publication))
    return Site(dict(sorted(files.items())), pages)


class _Plans:
    """The exercises of each protocol, planned when the first page asks for them."""

    def __init__(self, publication: Publication, examiner: Examiner) -> None:
        self._library = publication.library
        self._examiner = examiner
        self._plans: dict[str, tuple[Exercise, ...]] = {}

    def of(self, protocol: Protocol) -> tuple[Exercise, ...]:
        if protocol.id not in self._plans:
            self._plans[protocol.id] = plan_practice(self._library, protocol, self._examiner)
        return self._plans[protocol.id]


def _written(publication: Publication, pages: Iterable[Page]) -> Files:
    return {address.file_of(page.address): render_page(publication, page) for page in pages}


def _pages_in_language(publication: Publication, words: PageWords, plans: _Plans) -> Files:
    return _written(publication, _pages(publication, words, plans))


def _pages(publication: Publication, words: PageWords, plans: _Plans) -> Iterator[Page]:
    yield contents_page(publication, words)
    yield what_if_page(publication, words)
    for protocol in publication.protocols(words.tag):
        context = PageContext(publication, protocol, words)
        plan = plans.of(protocol)
        yield overview_page(context, has_practice=bool(plan))
        yield from step_pages(context)
        yield full_view_page(context)
        yield current_sheet_page(context)
        if has_trainer_notes(protocol):
            yield trainer_page(context)
        if plan:
            yield from practice_pages(context, plan)


def _assets(publication: Publication) -> Iterator[tuple[str, bytes]]:
    scripts = {
        words.script: metrics_of(words.script, words.wording.fonts) for words in publication.words.values()
    }
    yield address.STYLESHEET, stylesheet(scripts)
    yield address.SCRIPT, (resources.files("signage.pages") / "assets" / "site.js").read_bytes()
    for pattern in pattern_names():
        yield f"{address.ASSETS}{pattern}.svg", pattern_tile(pattern)
    directions = {words.is_right_to_left for words in publication.words.values()}
    keys = {
        publication.pictures.key(step, phase, is_right_to_left)
        for protocol in publication.protocols()
        for phase in protocol.phases
        for step in phase.steps
        for is_right_to_left in directions
    }
    for key in sorted(keys):
        yield key.file, publication.pictures.file(key)


def _letters(publication: Publication, files: Files, once: Once) -> Iterator[tuple[str, bytes]]:
    """Letters of scripts that a device may lack: all that pages use, and those of the languages' names."""
    languages: dict[str, list[PageWords]] = {}
    for words in publication.words.values():
        languages.setdefault(words.script, []).append(words)
    missing = _words_of(files[address.NOT_FOUND_FILE].decode())
    for script, of_script in languages.items():
        if own_letters(script):
            folders = tuple(f"{words.tag}/" for words in of_script)
            pages = (_words_of(data.decode()) for path, data in files.items() if path.startswith(folders))
            names = [text for words in of_script for text in (words.name, words.content("library/name"))]
            letters = [
                "".join(sorted(set(text))) for text in ("".join([*pages, *names, missing]), "".join(names))
            ]
            make = partial(_letter_files, script, *letters)
            yield from once(("letters", script, *letters), publication, make).items()


def _letter_files(script: str, letters: str, names: str) -> Files:
    return dict(letter_files(script, [letters], [names]))


def _words_of(page: str) -> str:
    """A page without its pictures; what scripts show later stands in attributes and data."""
    return _NOT_TEXT.sub("", page)
