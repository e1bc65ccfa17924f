"""Copies of the demo in which somebody has signed, by the same jobs that the commands call."""

import shutil
from datetime import date
from pathlib import Path

from demo import ROOT

from signage.model.people import translators_of
from signage.produce.approving import propose
from signage.produce.kept import KeptResults
from signage.produce.release import Releases
from signage.produce.signing import sign
from signage.project import Project, open_project
from signage.words.checking import check_off
from signage.words.update import write_changes

DAY = date(2026, 11, 26)
"""A day on which no review of the demo is due."""


class SignedCopy:
    """A copy of the demo in a folder; without ``is_demo`` its signed sheets are for use."""

    def __init__(self, folder: Path, *, is_demo: bool = False, of: Path | None = None) -> None:
        self.folder = folder
        if of is not None:
            shutil.copytree(of, folder)
            return
        for name in ("content", "locales"):
            shutil.copytree(ROOT / name, folder / name)
        if not is_demo:
            self.replace("content/library.yaml", "demo: yes\n", "")

    @property
    def project(self) -> Project:
        """The library as it is now."""
        return open_project(self.folder / "content", self.folder / "locales")

    def replace(self, path: str, old: str, new: str) -> None:
        """Replace the first of some words in a file, which must hold them."""
        file = self.folder / path
        text = file.read_bytes()
        assert old.encode() in text, old
        file.write_bytes(text.replace(old.encode(), new.encode(), 1))

    def proposal(self, locale=None, *, code="P3", by="ward-lead", on=DAY):
        """What a role would sign."""
        project = self.project
        protocol = next(each for each in project.library.protocols.values() if each.code == code)
        return propose(project, protocol, locale, project.library.people[by], on, KeptResults(project))

    def sign(self, locale=None, **who):
        """Sign, and give the records."""
        proposal = self.proposal(locale, **who)
        assert not proposal.objections, [str(each) for each in proposal.objections]
        return sign(self.project, proposal)

    def check_off(self, tag, *, code="P3", by="language-reader"):
        """Let a role check every text of a protocol in a language."""
        project = self.project
        library = project.library
        protocol = next(each for each in library.protocols.values() if each.code == code)
        made = check_off(
            library, project.messages, project.locales, tag, protocol, by, DAY,
            translators_of(library.people, tag),
        )  # fmt: skip
        write_changes(made.changes)
        return made


def signed_anew(project: Project, protocol: str, tag: str) -> Project:
    """The library of a project, signed in its own language by its own roles as it is, and opened again."""
    if Releases(project, DAY).of(protocol, tag).decision.mark.is_released:
        return project
    people = project.library.people
    by = next(role for role in people.values() if role.signs)
    chosen = project.library.protocols[protocol]
    proposal = propose(project, chosen, None, by, DAY, KeptResults(project))
    assert not proposal.objections, [str(each) for each in proposal.objections]
    sign(project, proposal)
    return open_project(project.content, project.locales, project.picture_set.kept)
