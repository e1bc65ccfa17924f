"""References of kit, glossary, wards and library to what other files declare."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from signage.ground.language import two_letter_form
from signage.ground.problem import Problem
from signage.load import faults
from signage.load.declared import Declared, Names, judge, judge_each, judge_tag
from signage.load.files.vocabulary import verb_problems
from signage.load.suggestion import shorten, suggest
from signage.load.yaml.nodes import Node, Table, Text, child, entries_of, items_of, text_of, texts_of

GARMENT = ("garment",)


def picture_problems(text: Text | None, known: Collection[str] | None) -> Iterator[Problem]:
    """The problem with the name of a picture; none where the pictures are not known."""
    if text is not None and known is not None and text.text not in known:
        yield faults.UNKNOWN_PICTURE.problem(
            f"There is no picture '{shorten(text.text)}'.",
            text.place,
            hint=suggest(text.text, set(known), "Pictures"),
        )


def library_problems(library: Node, declared: Declared) -> Iterator[Problem]:
    """The source language is one of the locales; protocols that a language is in use for exist."""
    source = text_of(library, "source-language")
    if source is not None:
        yield from judge_tag(source, declared.locales)
    yield from _long_code_problems(child(library, "locales"))
    for locale in entries_of(library, "locales").values():
        for protocol in texts_of(locale, "protocols"):
            if protocol.text not in declared.codes:
                yield from _protocol_problems(protocol, declared)


def _long_code_problems(locales: Node | None) -> Iterator[Problem]:
    """Languages that are written in three letters although two letters name them."""
    if not isinstance(locales, Table):
        return
    for tag in locales.values:
        short = two_letter_form(tag)
        if short is not None:
            yield faults.MALFORMED_NAME.problem(
                f"'{shorten(tag)}' is the long form of '{short}', and the short one is the one that counts.",
                locales.key_place(tag),
                hint=f"Write '{short}:', and call its folder of translations so too.",
            )


def kit_problems(kit: Node, declared: Declared, pictures: Collection[str] | None) -> Iterator[Problem]:
    """What garments lie over and need beneath them, and their pictures."""
    for node in (*entries_of(kit, "garments").values(), *entries_of(kit, "items").values()):
        for key in ("over", "needs-under"):
            yield from judge_each(texts_of(node, key), declared.kit, "a garment of kit.yaml", GARMENT)
        yield from _shape_problems(node, declared)
        for picture in entries_of(node, "pictures").values():
            if isinstance(picture, Text) and not picture.is_absent:
                yield from picture_problems(picture, pictures)


def _shape_problems(node: Node, declared: Declared) -> Iterator[Problem]:
    """What the parts, fasteners, techniques and models of one garment name."""
    for part in entries_of(node, "parts").values():
        yield from judge_each(texts_of(part, "over"), declared.kit, "a garment of kit.yaml", GARMENT)
    fasteners: Names = dict.fromkeys(entries_of(node, "fasteners"), "fastener")
    for fastener in entries_of(node, "fasteners").values():
        yield from judge_each(texts_of(fastener, "under"), fasteners, "a fastener of the same garment")
    models: Names = dict.fromkeys(entries_of(node, "models"), "model")
    yield from judge(text_of(node, "model"), models, "one of the 'models' of this garment")
    technique, allowed = text_of(node, "technique"), [each.text for each in texts_of(node, "techniques")]
    if technique is not None and allowed and technique.text not in allowed:
        yield faults.UNKNOWN_REFERENCE.problem(
            f"'{shorten(technique.text)}' is not among the 'techniques' of the same garment.",
            technique.place,
            hint=suggest(technique.text, allowed, "There are"),
        )


def term_problems(terms: Node, declared: Declared) -> Iterator[Problem]:
    """The locales of the forms, and the opposites of verbs."""
    yield from verb_problems(terms)
    for node in entries_of(terms, "terms").values():
        for key in ("approved", "forbidden"):
            yield from _locale_keys(child(node, key), declared.locales)


def ward_problems(ward: Node, declared: Declared) -> Iterator[Problem]:
    """Zones of doors, fixtures and slots; garments of zones and bins; locales of readers."""
    zones: Names = dict.fromkeys(entries_of(ward, "zones"), "zone")
    what = "a zone of this ward"
    for door in items_of(ward, "doors"):
        yield from judge(text_of(door, "from"), zones, what)
        yield from judge(text_of(door, "to"), zones, what)
    for zone in entries_of(ward, "zones").values():
        yield from judge_each(texts_of(zone, "requires"), declared.kit, "a garment of kit.yaml", GARMENT)
        yield from judge_each(texts_of(zone, "sees"), zones, what)
    for fixture in entries_of(ward, "fixtures").values():
        yield from judge(text_of(fixture, "zone"), zones, what)
        yield from judge_each(texts_of(fixture, "accepts"), declared.kit, "a garment or item of kit.yaml")
    for slot in entries_of(ward, "slots").values():
        yield from judge(text_of(slot, "at"), zones, what)
        for sheet in texts_of(slot, "sheets"):
            yield from _sheet_problems(sheet, declared)
    yield from _locale_keys(child(ward, "readers"), declared.locales)
    yield from _model_problems(child(ward, "models"), declared)


def _model_problems(models: Node | None, declared: Declared) -> Iterator[Problem]:
    """Models that a ward has, of garments and makes that kit.yaml does not know."""
    if not isinstance(models, Table):
        return
    for garment in models.values:
        name = Text(garment, models.key_place(garment))
        yield from judge(name, declared.kit, "a garment of kit.yaml", GARMENT)
        if garment in declared.models:
            known: Names = dict.fromkeys(declared.models[garment], "model")
            yield from judge(text_of(models, garment), known, f"one of the 'models' of '{garment}'")


def _locale_keys(node: Node | None, locales: Names | None) -> Iterator[Problem]:
    """Keys that are locales."""
    if isinstance(node, Table):
        for key in node.values:
            yield from judge_tag(Text(key, node.key_place(key)), locales)


def _protocol_problems(protocol: Text, declared: Declared) -> Iterator[Problem]:
    """A protocol that no file declares."""
    if declared.is_complete and protocol.text not in declared.protocols:
        yield faults.UNKNOWN_REFERENCE.problem(
            f"'{shorten(protocol.text)}' is not a protocol.",
            protocol.place,
            hint=suggest(protocol.text, declared.protocols, "There are"),
        )


def _sheet_problems(sheet: Text, declared: Declared) -> Iterator[Problem]:
    """A sheet of a slot: ``protocol`` or ``protocol/phase``."""
    if not declared.is_complete:
        return
    protocol, slash, phase = sheet.text.partition("/")
    yield from _protocol_problems(Text(protocol, sheet.place), declared)
    if protocol in declared.protocols and slash and phase not in declared.protocols[protocol]:
        yield faults.UNKNOWN_REFERENCE.problem(
            f"'{shorten(phase)}' is not a phase of the protocol '{protocol}'.",
            sheet.place,
            hint=suggest(phase, declared.protocols[protocol], "There are"),
        )
