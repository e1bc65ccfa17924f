"""Pages from templates: what every page carries, and the words that templates may use."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from signage.pages import address
from signage.pages.embedded_font import RARE_ON_PHONES
from signage.pages.picture import inline_picture
from signage.pages.publication import Publication
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
    theme: str = "plain"
    is_draft: bool = True
    control: Sequence[str] = ()
    root: str | None = None

    def link_to_file(self, file: str) -> str:
        """How this page names a file of the site."""
        return address.link_to_file(self.address, file) if self.root is None else self.root + file

    def link(self, target: str) -> str:
        """How this page names another page."""
        return self.link_to_file(address.file_of(target))


def render_page(publication: Publication, page: Page) -> bytes:
    """The HTML of a page; the same page gives the same bytes."""
    template = _environment().get_template(page.template)
    scripts = {words.script for words in publication.words.values()}.intersection(RARE_ON_PHONES)
    text = template.render(
        page=page,
        words=page.words,
        publication=publication,
        languages=[LanguageLink(publication.words[tag], at) for tag, at in page.languages.items()],
        fonts=sorted(font_file(script, is_whole=script == page.words.script) for script in scripts),
        link=page.link,
        file=page.link_to_file,
        stylesheet=page.link_to_file(address.STYLESHEET),
        script=page.link_to_file(address.SCRIPT),
        inline=inline_picture,
        picture_source=lambda key: page.link_to_file(key.file),
        **page.values,
    )
    return text.encode()


def font_file(script: str, *, is_whole: bool) -> str:
    """The stylesheet that carries the letters of a script, or only those of the names of languages."""
    return f"{address.ASSETS}{'letters' if is_whole else 'names'}-{script.lower()}.css"


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
