"""The content folder as a library: every file read, every problem of every file in one report."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Generic

from signage.ground.errors import UnreadableInputError
from signage.ground.problem import Problem, Severity
from signage.load.building import field_places
from signage.load.content_files import ContentFiles, find_files
from signage.load.declared import gather
from signage.load.duplicates import kit_duplicates, library_duplicates, protocol_duplicates, ward_duplicates
from signage.load.files.kit import KitEntry, build_kit
from signage.load.files.library import LibraryEntry, TermsEntry, build_locales, build_terms
from signage.load.files.policy import PoliciesEntry, build_policy, policy_problems
from signage.load.files.protocol import ProtocolEntry, build_protocol
from signage.load.files.scenes import scene_problems
from signage.load.files.vocabulary import build_vocabulary
from signage.load.files.waivers import WaiversEntry, build_waivers, waiver_problems
from signage.load.files.ward import WardEntry, build_ward
from signage.load.placeholders import name_brace_problems
from signage.load.protocol_references import protocol_problems
from signage.load.references import kit_problems, library_problems, term_problems, ward_problems
from signage.load.step_grammar import normal_form
from signage.load.validation import EntryType, validate
from signage.load.yaml.nodes import Node, entries_of, text_of
from signage.load.yaml.reader import read_yaml
from signage.model.library import Library, Vocabulary


@dataclass(frozen=True, slots=True)
class _Reading(Generic[EntryType]):
    """A file as nodes and, where its schema holds, as an entry."""

    node: Node | None
    entry: EntryType | None

    @property
    def valid(self) -> tuple[EntryType, Node]:
        """Entry and node of a file without problems."""
        assert self.entry is not None
        assert self.node is not None
        return self.entry, self.node


@dataclass(frozen=True, slots=True)
class _Readings:
    """All files of a content folder."""

    library: _Reading[LibraryEntry]
    kit: _Reading[KitEntry]
    policy: _Reading[PoliciesEntry]
    terms: _Reading[TermsEntry] | None
    wards: tuple[_Reading[WardEntry], ...]
    protocols: tuple[_Reading[ProtocolEntry], ...]
    scenes: tuple[Path, ...]
    waivers: _Reading[WaiversEntry] | None


def load_library(
    content: Path,
    known_pictures: Collection[str] | None = None,
    known_rules: Mapping[str, Severity] | None = None,
) -> Library:
    """The library of a content folder.

    ``known_pictures`` are the names of the pictures that ship with the programme, ``known_rules`` the
    severity of each rule by its code, for waivers; None leaves these unjudged. The scenes of the content are
    read as YAML only; ``Library.scene_files`` are their paths.
    Raises UnreadableInputError with every problem of every file, in the order of file, line and column.
    """
    problems: list[Problem] = []
    files = find_files(content, problems)
    if files is None:
        raise UnreadableInputError(problems)
    readings = _read_files(files, problems)
    problems.extend(scene_problems(readings.scenes, known_pictures or ()))
    if known_pictures is not None:
        known_pictures = {*known_pictures, *(scene.stem for scene in readings.scenes)}
    problems.extend(_reference_problems(readings, known_pictures))
    problems.extend(_waiver_problems(readings, known_rules))
    if problems:
        distinct = dict.fromkeys(problems)
        raise UnreadableInputError(sorted(distinct, key=lambda problem: (problem.place, problem.code)))
    return _build_library(readings)


def _read_file(path: Path, schema: type[EntryType], problems: list[Problem]) -> _Reading[EntryType]:
    """One file against its schema."""
    node, found = read_yaml(path)
    problems.extend(found)
    return _Reading(node, validate(node, schema, problems) if node is not None else None)


def _read_protocol(path: Path, problems: list[Problem]) -> _Reading[ProtocolEntry]:
    """A protocol's file, with ``do`` as a list in every step; its problems carry the protocol's name."""
    found: list[Problem] = []
    node, read = read_yaml(path)
    found.extend(read)
    entry = None
    if node is not None:
        node = normal_form(node, found)
        entry = validate(node, ProtocolEntry, found)
    problems.extend(_about(node, found))
    return _Reading(node, entry)


def _about(protocol: Node | None, problems: Iterable[Problem]) -> list[Problem]:
    """The problems with the name of the protocol that they are about."""
    name = text_of(protocol, "protocol")
    return [replace(problem, protocol=name.text if name else None) for problem in problems]


def _read_files(files: ContentFiles, problems: list[Problem]) -> _Readings:
    """Every file against its schema."""
    return _Readings(
        library=_read_file(files.library, LibraryEntry, problems),
        kit=_read_file(files.kit, KitEntry, problems),
        policy=_read_file(files.policy, PoliciesEntry, problems),
        terms=_read_file(files.terms, TermsEntry, problems) if files.terms is not None else None,
        wards=tuple(_read_file(path, WardEntry, problems) for path in files.wards),
        protocols=tuple(_read_protocol(path, problems) for path in files.protocols),
        scenes=files.scenes,
        waivers=_read_file(files.waivers, WaiversEntry, problems) if files.waivers is not None else None,
    )


def _reference_problems(readings: _Readings, pictures: Collection[str] | None) -> list[Problem]:
    """What the schemas of single files cannot see: references, duplicates, placeholders."""
    library, kit, policy = readings.library.node, readings.kit.node, readings.policy.node
    wards = [ward.node for ward in readings.wards]
    protocols = [protocol.node for protocol in readings.protocols]
    declared = gather(library, kit, policy, wards, protocols)
    problems = list(library_duplicates(library, wards, protocols))
    if library is not None:
        problems.extend((*library_problems(library, declared), *name_brace_problems(library)))
    if kit is not None:
        problems.extend(
            (*kit_duplicates(kit), *kit_problems(kit, declared, pictures), *name_brace_problems(kit))
        )
    if policy is not None:
        problems.extend(policy_problems(policy))
    if readings.terms is not None and readings.terms.node is not None:
        problems.extend(term_problems(readings.terms.node, declared))
    for ward in wards:
        if ward is not None:
            problems.extend(
                (*ward_duplicates(ward), *ward_problems(ward, declared), *name_brace_problems(ward))
            )
    for protocol in protocols:
        if protocol is not None:
            found = (
                *protocol_duplicates(protocol),
                *protocol_problems(protocol, declared, pictures),
                *name_brace_problems(protocol),
            )
            problems.extend(_about(protocol, found))
    return problems


def _waiver_problems(readings: _Readings, rules: Mapping[str, Severity] | None) -> list[Problem]:
    """What waivers name and what does not exist."""
    if readings.waivers is None or readings.waivers.node is None:
        return []
    locales = dict.fromkeys(entries_of(readings.library.node, "locales"), "locale")
    protocols = [each.node for each in readings.protocols]
    return list(waiver_problems(readings.waivers.node, protocols, rules, locales or None))


def _build_library(readings: _Readings) -> Library:
    """The frozen library of files that have no problems."""
    entry, node = readings.library.valid
    policy = build_policy(*readings.policy.valid)
    seconds = {key: value.value for key, value in policy.items() if type(value.value) is int}
    wards = [build_ward(*ward.valid) for ward in readings.wards]
    protocols = [build_protocol(*protocol.valid, seconds) for protocol in readings.protocols]
    return Library(
        name=entry.name,
        source_locale=entry.source_language,
        locales=build_locales(entry, node, {protocol.code: protocol.id for protocol in protocols}),
        training_address=entry.training_address,
        papers=entry.papers,
        garments=build_kit(*readings.kit.valid),
        policy=policy,
        terms=build_terms(*readings.terms.valid) if readings.terms is not None else (),
        vocabulary=build_vocabulary(*readings.terms.valid) if readings.terms is not None else Vocabulary(),
        wards={ward.id: ward for ward in wards},
        protocols={protocol.id: protocol for protocol in protocols},
        scene_files=tuple(scene.as_posix() for scene in readings.scenes),
        waivers=build_waivers(*readings.waivers.valid) if readings.waivers is not None else (),
        place=node.place,
        places=field_places(node, LibraryEntry, source_language="source_locale"),
    )
