"""The training site of a project: made from its content, written as files, old files taken away."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path, PurePosixPath

from signage.ground.errors import RefusedError
from signage.ground.files import write_whole
from signage.model.library import LocaleState
from signage.pages.address import FILE_LIST
from signage.pages.publication import Publication
from signage.pages.reasons import rehearsing
from signage.pages.site import Site, build_site
from signage.pages.words import PageWords
from signage.project import Project

SITE_FOLDER = "site"
"""Where the site goes inside the folder for what is made."""


@dataclass(frozen=True)
class LeftOut:
    """A language without pages, and why."""

    locale: str
    why: str

    def as_json(self) -> dict[str, str]:
        """Its fields by name."""
        return {"locale": self.locale, "why": self.why}


@dataclass(frozen=True)
class Published:
    """A written site."""

    folder: Path
    site: Site
    locales: tuple[str, ...]
    refused: tuple[LeftOut, ...]
    removed: int

    @property
    def size(self) -> int:
        """Bytes of all files."""
        return sum(map(len, self.site.files.values()))


def publication_of(
    project: Project, made_on: date, locales: Sequence[str] = ()
) -> tuple[Publication, tuple[LeftOut, ...]]:
    """What the pages are made from, and the languages that must not have any.

    ``locales`` narrows the languages. A language with a gap is left out: another one never takes its place.
    Raises RefusedError if none is left.
    """
    words: dict[str, PageWords] = {}
    refused: list[LeftOut] = []
    for tag in _by_readers(project, locales or project.locales_in_use):
        reason = _reason_to_leave_out(project, tag)
        if reason is None:
            words[tag] = PageWords(project.wording(tag))
        else:
            refused.append(LeftOut(tag, reason))
    if not words:
        raise RefusedError(
            "No language has all its words, so there are no pages. " + " ".join(each.why for each in refused)
        )
    protocols = project.library.protocols
    revisions = {name: project.revision(protocol) for name, protocol in protocols.items()}
    return Publication(project.marked_library, words, revisions, made_on), tuple(refused)


def site_of(project: Project, publication: Publication) -> Site:
    """The files of the site; exercises are judged by rehearsing the protocols."""
    return build_site(publication, rehearsing(project.library))


def publish(project: Project, output: Path, made_on: date, locales: Sequence[str] = ()) -> Published:
    """Make the site and write it into its folder; what an earlier run wrote and this one did not goes."""
    publication, refused = publication_of(project, made_on, locales)
    site = site_of(project, publication)
    folder = output / SITE_FOLDER
    removed = _take_away(folder, _listed(folder) - site.files.keys())
    write_site(folder, site.files)
    return Published(folder, site, tuple(publication.words), refused, removed)


def write_site(folder: Path, files: Mapping[str, bytes]) -> None:
    """Write all files that differ from what is there, and last the list of them."""
    for name, data in files.items():
        path = folder / name
        if not path.is_file() or path.read_bytes() != data:
            write_whole(path, data)
    write_whole(folder / FILE_LIST, "".join(f"{name}\n" for name in sorted(files)).encode())


def _by_readers(project: Project, tags: Iterable[str]) -> list[str]:
    """The languages that most people on the wards read come first; equal ones keep their order."""
    wards = project.library.wards.values()
    return sorted(tags, key=lambda tag: -sum(ward.readers.get(tag, 0) for ward in wards))


def _reason_to_leave_out(project: Project, tag: str) -> str | None:
    locale = project.library.locales.get(tag)
    if locale is not None and locale.state is LocaleState.IN_WORK:
        return f"{tag} is still in work: finish its words and set its state to in-use in library.yaml."
    gaps = project.wording(tag).gaps
    if gaps:
        return (
            f"{tag} lacks {len(gaps)} texts, such as '{gaps[0]}': complete locales/{tag}/LC_MESSAGES "
            f"('signage words progress' counts what is missing)."
        )
    return None


def _listed(folder: Path) -> set[str]:
    """The files of an earlier run; a line that leads out of the folder counts for nothing."""
    try:
        lines = (folder / FILE_LIST).read_text(encoding="utf-8").splitlines()
    except (OSError, UnicodeDecodeError):
        return set()
    return {line for line in lines if _is_inside(line)}


def _is_inside(name: str) -> bool:
    path = PurePosixPath(name)
    return bool(name) and not path.is_absolute() and ".." not in path.parts and "\\" not in name


def _take_away(folder: Path, names: Iterable[str]) -> int:
    """Remove the files and the folders that are empty then; says how many files went."""
    root = folder.resolve()
    removed = 0
    for name in names:
        path = folder / name
        if not path.is_file() or path.is_symlink() or root not in path.resolve().parents:
            continue
        path.unlink()
        removed += 1
        for parent in path.parents:
            if parent == folder or any(parent.iterdir()):
                break
            parent.rmdir()
    return removed
