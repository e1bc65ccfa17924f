"""Pages from templates: what every page carries, and the words that templates may use."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined, Template

from signage.model.choices import PhaseTheme
from signage.pages import address
from signage.pages.embedded_font import RARE_ON_PHONES, letter_style, own_letters
from signage.pages.publication import PageState, Publication
from signage.pages.words import PageWords


@dataclass(frozen=True)
class LanguageLink:
    """The same page in another language."""

    words: PageWords
    address: str


@dataclass(frozen=True)
class Page:
    """A page before it is written.

    ``languages`` are the addresses of the same page by locale; ``up`` leads to the page above with its name.
    ``values`` are for the template of its kind. ``control`` are the lines at the foot, such as the revision.
    ``root`` is the path of the site on its server for a page that may be shown at any address, else None.
    """

    address: str
    template: str
    words: PageWords
    title: str
    values: Mapping[str, Any]
    languages: Mapping[str, str]
    up: tuple[str, str] | None = None
    theme: PhaseTheme = PhaseTheme.PLAIN
    state: PageState = PageState.DRAFT
    control: Sequence[str] = ()
    root: str | None = None

    @property
    def is_in_every_language(self) -> bool:
        """Whether sentences of all languages stand on it, not their names alone."""
        return self.root is not None

    def link_to_file(self, file: str) -> str:
        """How this page names a file of the site."""
        return address.link_to_file(self.address, file) if self.root is None else self.root + file

    def link(self, target: str) -> str:
        """How this page names another page."""
        return self.link_to_file(address.file_of(target))


def render_page(publication: Publication, page: Page) -> bytes:
    """The HTML of a page; the same page gives the same bytes."""
    template = template_named(page.template)
    text = template.render(
        page=page,
        words=page.words,
        publication=publication,
        languages=[LanguageLink(publication.words[tag], at) for tag, at in page.languages.items()],
        fonts=_letter_styles(publication, page),
        link=page.link,
        file=page.link_to_file,
        stylesheet=page.link_to_file(address.STYLESHEET),
        script=page.link_to_file(address.SCRIPT),
        inline=publication.pictures.inline,
        picture_source=lambda key: page.link_to_file(key.file),
        **page.values,
    )
    return text.encode()


def _letter_styles(publication: Publication, page: Page) -> list[str]:
    """The letters of the page's own script, and those of the names of languages in others."""
    scripts = {words.script for words in publication.words.values() if own_letters(words.script)}
    return sorted(
        letter_style(
            script,
            is_whole=script == page.words.script or script not in RARE_ON_PHONES or page.is_in_every_language,
        )
        for script in scripts
    )


def template_named(name: str) -> Template:
    """A template of this room; it escapes every value, and refuses values that it was not given."""
    return _environment().get_template(name)


@cache
def _environment() -> Environment:
    return Environment(
        loader=PackageLoader("signage.pages"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
