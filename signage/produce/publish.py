"""The training site of a project: made from its content, written as files, old files taken away."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from signage.control.recall import Cause, cause_of
from signage.control.register.store import find_register, register_path
from signage.ground.errors import RefusedError
from signage.ground.files import write_changed
from signage.ground.made_files import is_inside, take_away
from signage.model.copies import PRINTED, CopyState, EventKind
from signage.model.current_sheet import CurrentSheets
from signage.pages.address import FILE_LIST
from signage.pages.picture import PagePictures
from signage.pages.practice.reasons import rehearsing
from signage.pages.publication import KnownCopies, Publication
from signage.pages.site import Site, build_site
from signage.pages.words import PageWords
from signage.produce.current_sheets import ReleasedSheets
from signage.produce.kept import KeptResults
from signage.produce.release import Releases
from signage.produce.released_list import RELEASED_LIST, released_list
from signage.produce.signed_facts import remember_head
from signage.project import Project

SITE_FOLDER = "site"
"""Where the site goes inside the folder for what is made."""


@dataclass(frozen=True)
class LeftOut:
    """A language without pages, or a protocol without pages in it, and why."""

    locale: str
    reasons: tuple[str, ...]
    protocol: str = ""

    def as_json(self) -> dict[str, str | None]:
        """Its fields by name."""
        return {"locale": self.locale, "protocol": self.protocol or None, "why": " ".join(self.reasons)}


@dataclass(frozen=True)
class Published:
    """A written site."""

    folder: Path
    site: Site
    locales: tuple[str, ...]
    refused: tuple[LeftOut, ...]
    removed: int
    signed: int = 0
    """Protocols whose pages in a language say that they are signed, and ``withdrawn`` those that say that."""

    withdrawn: int = 0

    @property
    def size(self) -> int:
        """Bytes of all files."""
        return sum(map(len, self.site.files.values()))


def publication_of(
    project: Project, made_on: date, locales: Sequence[str] = (), results: KeptResults | None = None
) -> tuple[Publication, tuple[LeftOut, ...]]:
    """What the pages are made from, and the languages and protocols that must not have any.

    ``locales`` narrows the languages. What may not be printed has no page either; a language with a gap is
    left out, and another one never takes its place. Raises RefusedError if nothing is left.
    """
    releases = Releases(project, made_on, results)
    protocols = project.library.protocols
    words: dict[str, PageWords] = {}
    left_out: dict[tuple[str, str], LeftOut] = {}
    for tag in _by_readers(project, locales or project.locales_in_use):
        refused = {
            name: LeftOut(tag, tuple(map(str, release.decision.reasons)), protocol.code)
            for name, protocol in protocols.items()
            if not (release := releases.of(name, tag)).has_pages
        }
        left_out.update({(name, tag): each for name, each in refused.items()})
        if len(refused) < len(protocols):
            words[tag] = PageWords(project.wording(tag))
    told = tuple(_worth_telling(project, left_out, words))
    if not words:
        reasons = dict.fromkeys(reason for each in told for reason in each.reasons)
        raise RefusedError(
            "\n    ".join(("No protocol can be shown in any language, so there are no pages.", *reasons))
        )
    revisions = {
        (name, tag): project.revision(protocol, tag) for name, protocol in protocols.items() for tag in words
    }
    current, states = ReleasedSheets(project, releases), _states(project)
    made = Publication(
        project.marked_library,
        words,
        PagePictures(project.picture_set),
        revisions,
        made_on,
        earlier_revisions=_earlier_codes(states, current),
        left_out=frozenset(left_out),
        approved={
            (name, tag): signed
            for name, tag in revisions
            if releases.of(name, tag).decision.mark.is_released
            and (signed := project.signed_by(protocols[name], tag)) is not None
        },
        withdrawn=frozenset(key for key in revisions if releases.of(*key).decision.is_withdrawn),
        current=dict(current),
        copies=_known_copies(states, current),
    )
    return made, told


def _states(project: Project) -> tuple[CopyState, ...]:
    """What the register of the library knows of copies."""
    register = find_register(register_path(project.content))
    if register is None:
        return ()
    with register:
        return register.states()


def _known_copies(states: Iterable[CopyState], current: CurrentSheets) -> dict[tuple[str, str], KnownCopies]:
    """By protocol and language: what may hang on a wall, for it is in force and not ended, and all others."""
    good: dict[tuple[str, str], list[str]] = {}
    gone: dict[tuple[str, str], list[str]] = {}
    for state in states:
        key = (state.copy.subject, state.copy.locale)
        is_good = state.state in {PRINTED, EventKind.MOUNTED} and cause_of(state, current) is None
        (good if is_good else gone).setdefault(key, []).append(state.copy.number)
    return {
        key: KnownCopies(tuple(good.get(key, ())), tuple(gone.get(key, ()))) for key in sorted({*good, *gone})
    }


def _earlier_codes(states: Iterable[CopyState], current: CurrentSheets) -> dict[str, tuple[str, ...]]:
    """By protocol the codes of printed copies that a sheet in force has replaced."""
    codes: dict[str, dict[str, None]] = {}
    for state in states:
        if cause_of(state, current) is Cause.REPLACED:
            codes.setdefault(state.copy.subject, {})[state.copy.code] = None
    return {subject: tuple(found) for subject, found in codes.items()}


def _worth_telling(
    project: Project, left_out: Mapping[tuple[str, str], LeftOut], words: Mapping[str, PageWords]
) -> Iterator[LeftOut]:
    """A language without any pages once; of another one what is missing though it is in use for it."""
    told: set[str] = set()
    for (name, tag), each in left_out.items():
        locale = project.library.locales.get(tag)
        if tag not in words:
            if tag not in told:
                told.add(tag)
                yield replace(each, protocol="")
        elif locale is None or locale.is_in_use_for(name):
            yield each


def site_of(project: Project, publication: Publication, results: KeptResults | None = None) -> Site:
    """The files of the site; exercises are judged by rehearsing the protocols."""
    once = (results or KeptResults(project)).page_files
    site = build_site(publication, rehearsing(project.library), once)
    files = {**site.files, RELEASED_LIST: released_list(publication.current)}
    return Site(dict(sorted(files.items())), site.pages)


def publish(
    project: Project,
    output: Path,
    made_on: date,
    locales: Sequence[str] = (),
    results: KeptResults | None = None,
) -> Published:
    """Make the site and write it into its folder; what an earlier run wrote and this one did not goes."""
    publication, refused = publication_of(project, made_on, locales, results)
    site = site_of(project, publication, results)
    remember_head(project)
    folder = output / SITE_FOLDER
    removed = take_away(folder, _listed(folder) - site.files.keys())
    write_site(folder, site.files)
    signed, withdrawn = len(publication.approved), len(publication.withdrawn)
    return Published(folder, site, tuple(publication.words), refused, len(removed), signed, withdrawn)


def write_site(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write all files that differ from what is there, and the list of them.

    First the list names old files and new ones, so that a run that is killed leaves none that no list names.
    """
    _write_list(folder, _listed(folder) | files.keys())
    for name, data in files.items():
        write_changed(folder / name, data)
    _write_list(folder, files)


def _write_list(folder: Path, names: Iterable[str]) -> None:
    data = "".join(f"{name}\n" for name in sorted(names)).encode()
    write_changed(folder / FILE_LIST, data)


def _by_readers(project: Project, tags: Iterable[str]) -> list[str]:
    """The languages that most people on the wards read come first; equal ones keep their order."""
    wards = project.library.wards.values()
    return sorted(tags, key=lambda tag: -sum(ward.readers.get(tag, 0) for ward in wards))


def _listed(folder: Path) -> set[str]:
    """The files of an earlier run; a line that leads out of the folder counts for nothing."""
    try:
        lines = (folder / FILE_LIST).read_text(encoding="utf-8").splitlines()
    except (OSError, UnicodeDecodeError):
        return set()
    return {line for line in lines if is_inside(line)}
