"""The pages of a site before they are written: enough to tell where a link leads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from signage.pages import address
from signage.pages.publication import Publication
from signage.pages.rendering import render_page
from signage.pages.site import pages_of


class PlannedSite(Mapping[str, bytes]):
    """The pages by file, without those of exercises; each is written only when it is read."""

    def __init__(self, publication: Publication) -> None:
        self._publication = publication
        self._pages = {address.file_of(page.address): page for page in pages_of(publication, {})}

    def __getitem__(self, file: str) -> bytes:
        return render_page(self._publication, self._pages[file])

    def __iter__(self) -> Iterator[str]:
        return iter(self._pages)

    def __len__(self) -> int:
        return len(self._pages)
