"""What is released of each protocol in each language: found when it is asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from signage.ground.errors import RefusedError
from signage.ground.fingerprint import fingerprint
from signage.model.current_sheet import CurrentSheet
from signage.produce.release import Releases
from signage.project import Project


@dataclass
class ReleasedSheets(Mapping[tuple[str, str], CurrentSheet]):
    """The released sheets of a project by protocol and language; each is found once, when it is wanted."""

    project: Project
    releases: Releases
    _found: dict[tuple[str, str], CurrentSheet] = field(default_factory=dict)

    def __getitem__(self, key: tuple[str, str]) -> CurrentSheet:
        if key not in set(self):
            raise KeyError(key)
        if key not in self._found:
            self._found[key] = self._find(*key)
        return self._found[key]

    def __iter__(self) -> Iterator[tuple[str, str]]:
        library = self.project.library
        return ((protocol, tag) for protocol in library.protocols for tag in library.locales)

    def __len__(self) -> int:
        return sum(1 for _ in self)

    def _find(self, name: str, tag: str) -> CurrentSheet:
        protocol = self.project.library.protocols[name]
        state = self.project.sign_offs.of(protocol.code)
        is_withdrawn = state.withdrawal(tag) is not None
        steps, words = state.order, state.words.get(tag)
        if steps is None or words is None:
            return CurrentSheet(name, tag, None, is_withdrawn=is_withdrawn)
        whole = fingerprint((steps.content, words.content))
        may_be_drawn = self.releases.of(name, tag).decision.mark.is_released
        is_being_revised = whole != self.project.content_hash(protocol, tag)
        reviews = [record.review_by for record in (steps, words) if record.review_by is not None]
        is_reviewed = all(self.releases.today <= review_by for review_by in reviews)
        return CurrentSheet(
            name,
            tag,
            whole,
            f"{steps.code}-{words.code}",
            max(steps.on, words.on),
            is_withdrawn,
            may_be_mounted=may_be_drawn or (is_being_revised and is_reviewed),
            may_be_drawn=may_be_drawn,
        )


def refuse_damaged(project: Project) -> None:
    """Raises RefusedError where no sign-off counts for the file is damaged: nothing could be told by it."""
    fault = project.sign_offs.fault
    if fault is not None:
        raise RefusedError(f"What is in force cannot be told. {fault}")
