"""The fixed words and the captions of pictures that the programme brings in other languages, unverified.

One PO file a language, made from the catalogues of the demo by ``signage words ship``; a test holds them
equal. What they lend is marked as a machine's: nobody has signed it.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from importlib.resources import files
from pathlib import Path

from signage.ground.language import language_of, script_of
from signage.words.catalogue import Catalogue, CatalogueKind, Entry, catalogue_path
from signage.words.marks import MACHINE, SAME_AS_SOURCE
from signage.words.po.reader import read_catalogue, read_catalogue_file
from signage.words.po.writer import write_catalogue

_FOLDER = "shipped_words"
_KINDS = ("interface/", "picture/")
_HEADER = {"Content-Type": "text/plain; charset=UTF-8", "Content-Transfer-Encoding": "8bit"}


def shipped_tags() -> tuple[str, ...]:
    """The languages in which the programme brings its words."""
    names = (entry.name for entry in (files("signage.words") / _FOLDER).iterdir())
    return tuple(sorted(name.removesuffix(".po") for name in names if name.endswith(".po")))


def shipped_entries(tag: str) -> dict[str, Entry]:
    """The words that the programme brings in a language, by context; none where it brings none.

    A tag with a region takes those of its language, where it is written in the same script.
    """
    known = shipped_tags()
    language = language_of(tag)
    if tag not in known:
        if language not in known or script_of(language) != script_of(tag):
            return {}
        tag = language
    return _entries(tag)


@lru_cache(maxsize=8)
def _entries(tag: str) -> dict[str, Entry]:
    data = (files("signage.words") / _FOLDER / f"{tag}.po").read_bytes()
    return read_catalogue(data, f"{tag}.po", tag).catalogue.by_context


def files_to_ship(locales: Path, tags: Iterable[str], used: Iterable[str]) -> dict[str, bytes]:
    """The shipped files by their names, from the catalogues of these languages.

    ``used`` are the contexts that a library can have; entries that are doubtful or have no translation are
    left out, and notes and marks of people as well.
    """
    wanted = frozenset(context for context in used if context.startswith(_KINDS))
    made = {}
    for tag in tags:
        entries = [
            Entry(
                context=entry.context,
                source=entry.source,
                translation=entry.translation,
                comments=(MACHINE, SAME_AS_SOURCE) if entry.marks.is_same_as_source else (MACHINE,),
            )
            for kind in (CatalogueKind.INTERFACE, CatalogueKind.CONTENT)
            for entry in read_catalogue_file(catalogue_path(locales, tag, kind), tag).catalogue.entries
            if entry.context in wanted and entry.translation.strip() and not entry.is_doubtful
        ]
        catalogue = Catalogue(
            entries=tuple(entries),
            header={"Language": tag, **_HEADER},
            header_comments=(" Words of the programme: made by 'signage words ship', not to be edited.",),
        )
        made[f"{tag}.po"] = write_catalogue(catalogue)
    return made
