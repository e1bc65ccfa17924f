"""The pages behind the codes of sheets before they are written: enough to tell where a link leads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from signage.pages import address
from signage.pages.protocol_pages import overview_page, step_pages
from signage.pages.publication import PageContext, Publication
from signage.pages.rendering import Page, render_page


class PlannedSite(Mapping[str, bytes]):
    """The pages of protocols and of their steps in a language by file; each is written when it is read."""

    def __init__(self, publication: Publication, tag: str) -> None:
        self._publication = publication
        self._pages = {address.file_of(page.address): page for page in _pages_of_codes(publication, tag)}

    def __getitem__(self, file: str) -> bytes:
        return render_page(self._publication, self._pages[file])

    def __contains__(self, file: object) -> bool:
        return file in self._pages

    def __iter__(self) -> Iterator[str]:
        return iter(self._pages)

    def __len__(self) -> int:
        return len(self._pages)


def _pages_of_codes(publication: Publication, tag: str) -> Iterator[Page]:
    for protocol in publication.protocols(tag):
        context = PageContext(publication, protocol, publication.words[tag])
        yield overview_page(context, has_practice=False)
        yield from step_pages(context)
