"""Exactly what each result is made from, as one fingerprint."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Hashable, Sequence
from pathlib import Path
from typing import Any, TypeVar

from signage.compose.proof import Faulty
from signage.compose.sheet_kind import Per
from signage.ground.edition import edition_date
from signage.ground.fingerprint import fingerprint
from signage.model.mark import Mark
from signage.model.revision import plain
from signage.pages.publication import Publication
from signage.produce.code_version import PAGES, PAINT, PICTURES, RULES, SHEETS, WORDS, code_version
from signage.produce.requests import SheetRequest, context_of
from signage.project import Project
from signage.words.catalogue import catalogue_path, kinds_of
from signage.words.wording import Wording

Part = TypeVar("Part")


class Fingerprints:
    """The fingerprints of the results of one project; each part of them is made once.

    Places in files are no part of a sheet, so that a comment above a step changes none; a finding on a sheet
    is kept without its place, which is looked up again. The findings of words and pictures are kept with
    their places, so there all places count.
    """

    def __init__(self, project: Project) -> None:
        self._project = project
        self._parts: dict[Hashable, Any] = {}

    def sheet(self, request: SheetRequest, mark: Mark, faulty: Faulty) -> str:
        """Of a composed sheet: its context, what is asked for, and on a proof what is outlined."""
        outlined = [sorted(faulty.texts), sorted(faulty.steps)] if mark is Mark.PROOF else []
        return fingerprint(
            {
                "code": code_version(*SHEETS),
                "context": self._context(request, mark),
                "request": plain(request),
                "outlined": outlined,
            }
        )

    def _context(self, request: SheetRequest, mark: Mark) -> str:
        """Of all that a sheet can show: nothing else is handed to its composer."""
        shows_pictures = self._project.kinds.of(request.kind).per is Per.PICTURES
        about = (request.protocol, shows_pictures)
        key = ("context", *about, request.locale, request.tone, mark)

        def make() -> str:
            context = context_of(self._project, request, mark)
            return fingerprint(
                {
                    "library": self._once(("library", *about), lambda: _plain(context.library)),
                    "protocols": self._once(("protocols", *about), lambda: _plain(context.protocols)),
                    "words": self._words_in(context.wording, mark, *about),
                    "source": self._words_in(
                        context.source, mark if mark.is_released else Mark.DRAFT, *about
                    ),
                    "pictures": [(name, self._picture(name)) for name in context.picture_set.names],
                    "fonts": self._fonts,
                    "revision": context.revision,
                    "tone": context.tone.value,
                    "mark": context.mark.value,
                    "signed": None if context.signed is None else plain(context.signed),
                }
            )

        return self._once(key, make)

    def _words_in(self, wording: Wording, mark: Mark, *about: Hashable) -> str:
        """Of words as they are written."""
        return self._once(
            ("words", wording.tag, mark is Mark.PROOF, mark.is_released, *about),
            lambda: fingerprint([wording.tag, wording.name, wording.numeral_system, wording.texts]),
        )

    def _picture(self, name: str) -> str:
        return self._once(("picture", name), lambda: self._project.picture_set.source_fingerprint(name))

    @property
    def _fonts(self) -> list[tuple[str, str]]:
        return [(font.file, font.sha256) for font in self._project.fonts.own]

    def painted(self, sheet: str, what: str) -> str:
        """Of what is painted of a sheet, by the fingerprint of the composed one; files carry a date."""
        return fingerprint([code_version(*PAINT), sheet, what, edition_date().isoformat()])

    def verdict(self, sheet: str, which: str) -> str:
        """Of what rules find on a sheet, by the fingerprint of the composed one."""
        return fingerprint([code_version(*RULES), sheet, which])

    def words(self, tag: str) -> str:
        """Of what rules find in the words of a language."""
        project, library = self._project, self._project.library
        files = [catalogue_path(project.locales, tag, kind) for kind in kinds_of(library, tag)]
        return fingerprint(
            {
                "code": code_version(*WORDS),
                "tag": tag,
                "library": self._once("located library", lambda: _located(library)),
                "messages": self._once("messages", lambda: _located(project.messages)),
                "fonts": self._fonts,
                "files": [(path.as_posix(), _digest(path)) for path in files],
            }
        )

    def picture(self, name: str) -> str:
        """Of what rules find on a picture, which is held against all others in use."""
        pictures = self._project.picture_set
        return fingerprint(
            {
                "code": code_version(*PICTURES, *RULES),
                "name": name,
                "place": str(pictures.scene(name).place),
                "pictures": self._once("pictures", lambda: self._pictures_in_use),
                "own": self._picture(name),
            }
        )

    @property
    def _pictures_in_use(self) -> list[tuple[str, str]]:
        return [(name, self._picture(name)) for name in self._project.pictures_in_use]

    def pages(self, about: Sequence[str], publication: Publication) -> str:
        """Of files of the training site, from the part of its publication that they are made from."""
        pictures = self._once("pictures", lambda: self._pictures_in_use)
        return fingerprint(
            {
                "code": code_version(*PAGES),
                "about": list(about),
                "library": self._once("marked library", lambda: _plain(publication.library)),
                "words": [
                    [tag, words.name, words.wording.numeral_system, words.wording.texts]
                    for tag, words in publication.words.items()
                ],
                "pictures": pictures,
                "fonts": self._fonts,
                "revisions": sorted([*key, code] for key, code in publication.revisions.items()),
                "earlier": sorted([name, *codes] for name, codes in publication.earlier_revisions.items()),
                "approved": sorted([*key, plain(signed)] for key, signed in publication.approved.items()),
                "withdrawn": sorted(publication.withdrawn),
                "left out": sorted(publication.left_out),
                "current": sorted([*key, plain(sheet)] for key, sheet in publication.current.items()),
                "copies": sorted([*key, plain(known)] for key, known in publication.copies.items()),
                "made on": publication.made_on.isoformat(),
            }
        )

    def _once(self, key: Hashable, make: Callable[[], Part]) -> Part:
        if key not in self._parts:
            self._parts[key] = make()
        found: Part = self._parts[key]
        return found


def _plain(value: Any) -> str:
    return fingerprint(plain(value))


def _located(value: Any) -> str:
    return fingerprint(plain(value, has_places=True))


def _digest(path: Path) -> str:
    """Of the bytes of a file; one that is missing or cannot be read is told by the rules."""
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError as error:
        return type(error).__name__
