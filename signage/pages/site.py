"""The whole site as files: every page in every language, pictures, stylesheet, script."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib import resources

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


def build_site(publication: Publication, examiner: Examiner) -> Site:
    """All files of the site. The same publication gives the same bytes.

    ``examiner`` judges the orders of exercises. Raises MissingMessageError where a language lacks a text.
    """
    plans = {
        protocol.id: plan_practice(publication.library, protocol, examiner)
        for protocol in publication.protocols()
    }
    files: dict[str, bytes] = {}
    for page in _pages(publication, plans):
        files[address.file_of(page.address)] = render_page(publication, page)
    pages = len(files)
    files[address.NOT_FOUND_FILE] = render_page(publication, not_found_page(publication))
    files.update(_letters(publication, files))
    files.update(_assets(publication))
    return Site(dict(sorted(files.items())), pages)


def _pages(publication: Publication, plans: Mapping[str, tuple[Exercise, ...]]) -> Iterator[Page]:
    yield languages_page(publication)
    for words in publication.words.values():
        yield contents_page(publication, words)
        yield what_if_page(publication, words)
        for protocol in publication.protocols(words.tag):
            context = PageContext(publication, protocol, words)
            plan = plans[protocol.id]
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


def _letters(publication: Publication, files: Mapping[str, bytes]) -> Iterator[tuple[str, bytes]]:
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
            yield from letter_files(script, [*pages, *names, missing], names)


def _words_of(page: str) -> str:
    """A page without its pictures; what scripts show later stands in attributes and data."""
    return _NOT_TEXT.sub("", page)
