"""library.yaml and terms.yaml: name, languages, papers and glossary of a library."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from signage.load.building import build, build_each, places_below, table
from signage.load.files.vocabulary import VocabularyEntry
from signage.load.kinds import (
    NOT_EMPTY,
    Identifier,
    LanguageTag,
    Name,
    ReadableText,
    WebAddress,
    YesNo,
    one_of,
)
from signage.load.validation import NONE, Entry
from signage.load.yaml.nodes import Node, child
from signage.model.library import Locale, LocaleState, Term

PAPERS = ("A0", "A1", "A2", "A3", "A4", "A5", "A6", "A7", "Letter", "Legal", "Tabloid")
"""Sizes of ISO 216 and those of North American offices."""

Paper = Annotated[str, one_of(*PAPERS)]

NUMERALS = (
    "latn", "arab", "arabext", "beng", "deva", "gujr", "guru", "khmr", "knda", "laoo", "mlym", "mymr",
    "nkoo", "olck", "orya", "sinh", "tamldec", "telu", "thai", "tibt",
)  # fmt: skip
"""Decimal numbering systems of CLDR whose scripts are in daily use."""


class LocaleEntry(Entry):
    """A language of the library."""

    owner: Name
    """The role that answers for this language."""

    state: Annotated[str, one_of("in-use", "in-work")]
    """in-use: a gap is a fault; in-work: a gap is progress, and only proofs are printed."""

    numerals: Annotated[str, one_of(*NUMERALS)] | None = None
    """The digits, as a numbering system of CLDR; without it, the language's own."""

    register_: Annotated[str, one_of("formal", "familiar")] | None = None
    """How readers are addressed."""

    protocols: tuple[ReadableText, ...] = ()
    """Codes or ids of the protocols it is in use for; for all others it is in work. Without it, for all."""


class LibraryEntry(Entry):
    """All of library.yaml."""

    name: Name
    """The hospital, as sheets name it."""

    source_language: LanguageTag
    """The language in which the texts of the content are written; one of the locales."""

    training_address: WebAddress
    """Where the training pages are found; it begins every code on a sheet."""

    demo: YesNo = False
    """Whether everything is invented: whatever is signed says "Demonstration. Not for clinical use."."""

    papers: Annotated[tuple[Paper, ...], NOT_EMPTY]
    """The papers that posters are drawn on where nobody asks for another."""

    locales: Annotated[dict[LanguageTag, LocaleEntry], NOT_EMPTY]
    """Each language by its tag."""


class TermEntry(Entry):
    """A glossary entry; forms stand by locale."""

    source: ReadableText
    """The term as the source texts write it."""

    note: ReadableText = ""
    """What translators need to know about it."""

    approved: dict[LanguageTag, tuple[ReadableText, ...]] = NONE
    """The forms that translations use, by locale."""

    forbidden: dict[LanguageTag, tuple[ReadableText, ...]] = NONE
    """The forms that translations must not use, by locale."""


class TermsEntry(VocabularyEntry):
    """All of terms.yaml."""

    terms: dict[Identifier, TermEntry]
    """Each term by its identifier."""


def build_locales(entry: LibraryEntry, node: Node, ids: Mapping[str, str]) -> dict[str, Locale]:
    """The locales of a valid library.yaml in the order of the file; ``ids`` finds protocols by code."""
    return build_each(
        Locale,
        entry.locales,
        child(node, "locales"),
        id_field="tag",
        more=lambda _tag, locale: {
            "state": LocaleState(locale.state),
            "protocols": tuple(ids.get(name, name) for name in locale.protocols),
        },
    )


def build_terms(entry: TermsEntry, node: Node) -> tuple[Term, ...]:
    """The glossary of a valid terms.yaml; places are kept for each locale too."""
    nodes = table(child(node, "terms"))
    return tuple(
        build(
            Term,
            term,
            nodes.values[key],
            id_field="id",
            id_place=nodes.key_place(key),
            places={
                **places_below(nodes.values[key], "approved"),
                **places_below(nodes.values[key], "forbidden"),
            },
            id=key,
        )
        for key, term in entry.terms.items()
    )
