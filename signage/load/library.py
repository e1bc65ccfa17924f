"""The content folder as a library: every file read, every problem of every file in one report."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Generic

from signage.ground.errors import UnreadableInputError
from signage.ground.problem import Problem, Reading, Severity, read_each, with_problems
from signage.load.building import field_places
from signage.load.content_files import ContentFiles, find_files
from signage.load.declared import gather
from signage.load.duplicates import kit_duplicates, library_duplicates, protocol_duplicates, ward_duplicates
from signage.load.files.kit import KitEntry, build_kit, kit_normal_form
from signage.load.files.library import LibraryEntry, TermsEntry, build_locales, build_terms
from signage.load.files.people import PeopleEntry, build_people, people_problems
from signage.load.files.policy import PoliciesEntry, build_policy, policy_problems
from signage.load.files.protocol import ProtocolEntry, build_protocol, technique_seconds
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
from signage.model.library import Library
from signage.model.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True)
class _FileRead(Generic[EntryType]):
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
class _FilesRead:
    """All files of a content folder."""

    library: _FileRead[LibraryEntry]
    kit: _FileRead[KitEntry]
    policy: _FileRead[PoliciesEntry]
    terms: _FileRead[TermsEntry] | None
    wards: tuple[_FileRead[WardEntry], ...]
    protocols: tuple[_FileRead[ProtocolEntry], ...]
    scenes: tuple[Path, ...]
    waivers: _FileRead[WaiversEntry] | None
    people: _FileRead[PeopleEntry] | None


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
    read, problems = with_problems(_read(content, known_pictures, known_rules))
    if read is None or problems:
        distinct = dict.fromkeys(problems)
        raise UnreadableInputError(sorted(distinct, key=lambda problem: (problem.place, problem.code)))
    return _build_library(read)


def _read(
    content: Path, pictures: Collection[str] | None, rules: Mapping[str, Severity] | None
) -> Reading[_FilesRead | None]:
    """Every file, first by itself and then beside the others; None where there is no folder."""
    files = yield from find_files(content)
    if files is None:
        return None
    read = yield from _read_files(files)
    yield from scene_problems(read.scenes, pictures or ())
    if pictures is not None:
        pictures = {*pictures, *(scene.stem for scene in read.scenes)}
    yield from _reference_problems(read, pictures)
    yield from _waiver_problems(read, rules)
    yield from _people_problems(read)
    return read


def _read_file(
    path: Path, schema: type[EntryType], form: Callable[[Node], Node] = lambda node: node
) -> Reading[_FileRead[EntryType]]:
    """One file against its schema, in which ``form`` has made one shape of two ways to write a thing."""
    node = yield from read_yaml(path)
    node = form(node) if node is not None else None
    return _FileRead(node, (yield from validate(node, schema)) if node is not None else None)


def _read_protocol(path: Path) -> Reading[_FileRead[ProtocolEntry]]:
    """A protocol's file, with ``do`` as a list in every step; its problems carry the protocol's name."""
    read, problems = with_problems(_read_normal_form(path))
    yield from _about(read.node, problems)
    return read


def _read_normal_form(path: Path) -> Reading[_FileRead[ProtocolEntry]]:
    node = yield from read_yaml(path)
    if node is None:
        return _FileRead(None, None)
    node = yield from normal_form(node)
    return _FileRead(node, (yield from validate(node, ProtocolEntry)))


def _about(protocol: Node | None, problems: Iterable[Problem]) -> Iterator[Problem]:
    """The problems with the name of the protocol that they are about."""
    name = text_of(protocol, "protocol")
    for problem in problems:
        yield replace(problem, protocol=name.text if name else None)


def _read_files(files: ContentFiles) -> Reading[_FilesRead]:
    """Every file against its schema."""
    library = yield from _read_file(files.library, LibraryEntry)
    kit = yield from _read_file(files.kit, KitEntry, kit_normal_form)
    policy = yield from _read_file(files.policy, PoliciesEntry)
    terms = (yield from _read_file(files.terms, TermsEntry)) if files.terms is not None else None
    wards = yield from read_each(_read_file(path, WardEntry) for path in files.wards)
    protocols = yield from read_each(map(_read_protocol, files.protocols))
    waivers = (yield from _read_file(files.waivers, WaiversEntry)) if files.waivers is not None else None
    people = (yield from _read_file(files.people, PeopleEntry)) if files.people is not None else None
    return _FilesRead(library, kit, policy, terms, wards, protocols, files.scenes, waivers, people)


def _reference_problems(read: _FilesRead, pictures: Collection[str] | None) -> Iterator[Problem]:
    """What the schemas of single files cannot see: references, duplicates, placeholders."""
    library, kit, policy = read.library.node, read.kit.node, read.policy.node
    wards = [ward.node for ward in read.wards]
    protocols = [protocol.node for protocol in read.protocols]
    declared = gather(library, kit, policy, wards, protocols)
    yield from library_duplicates(library, wards, protocols)
    if library is not None:
        yield from library_problems(library, declared)
        yield from name_brace_problems(library)
    if kit is not None:
        yield from kit_duplicates(kit)
        yield from kit_problems(kit, declared, pictures)
        yield from name_brace_problems(kit)
    if policy is not None:
        yield from policy_problems(policy)
    if read.terms is not None and read.terms.node is not None:
        yield from term_problems(read.terms.node, declared)
    for ward in wards:
        if ward is not None:
            yield from ward_duplicates(ward)
            yield from ward_problems(ward, declared)
            yield from name_brace_problems(ward)
    for protocol in protocols:
        if protocol is not None:
            yield from _about(protocol, protocol_duplicates(protocol))
            yield from _about(protocol, protocol_problems(protocol, declared, pictures))
            yield from _about(protocol, name_brace_problems(protocol))


def _waiver_problems(read: _FilesRead, rules: Mapping[str, Severity] | None) -> Iterator[Problem]:
    """What waivers name and what does not exist."""
    if read.waivers is None or read.waivers.node is None:
        return
    locales = dict.fromkeys(entries_of(read.library.node, "locales"), "locale")
    protocols = [each.node for each in read.protocols]
    yield from waiver_problems(read.waivers.node, protocols, rules, locales or None)


def _people_problems(read: _FilesRead) -> Iterator[Problem]:
    """What roles write, translate and check and what does not exist; silent where a protocol is unread."""
    nodes = [each.node for each in read.protocols]
    if read.people is None or read.people.node is None or None in nodes:
        return
    names = [(text_of(node, "protocol"), text_of(node, "code")) for node in nodes]
    protocols = dict.fromkeys((name.text for name, _ in names if name), "protocol")
    codes = {code.text: name.text for name, code in names if name and code}
    locales = dict.fromkeys(entries_of(read.library.node, "locales"), "locale")
    yield from people_problems(read.people.node, protocols, codes, locales or None)


def _build_library(read: _FilesRead) -> Library:
    """The frozen library of files that have no problems."""
    entry, node = read.library.valid
    policy = build_policy(*read.policy.valid)
    seconds = {key: value.value for key, value in policy.items() if type(value.value) is int}
    techniques = technique_seconds((each.valid[0] for each in read.protocols), seconds)
    wards = [build_ward(*ward.valid) for ward in read.wards]
    protocols = [build_protocol(*protocol.valid, seconds, techniques) for protocol in read.protocols]
    ids = {protocol.code: protocol.id for protocol in protocols}
    return Library(
        name=entry.name,
        source_locale=entry.source_language,
        locales=build_locales(entry, node, ids),
        training_address=entry.training_address,
        papers=entry.papers,
        garments=build_kit(*read.kit.valid),
        policy=policy,
        terms=build_terms(*read.terms.valid) if read.terms is not None else (),
        vocabulary=build_vocabulary(*read.terms.valid) if read.terms is not None else Vocabulary(),
        wards={ward.id: ward for ward in wards},
        protocols={protocol.id: protocol for protocol in protocols},
        scene_files=tuple(scene.as_posix() for scene in read.scenes),
        waivers=build_waivers(*read.waivers.valid) if read.waivers is not None else (),
        people=build_people(*read.people.valid, ids) if read.people is not None else {},
        is_demo=entry.demo,
        place=node.place,
        places=field_places(node, LibraryEntry, source_language="source_locale"),
    )
