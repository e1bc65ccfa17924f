"""What is released of each protocol in each language: found when it is asked for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

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
        return CurrentSheet(
            name,
            tag,
            fingerprint((steps.content, words.content)),
            f"{steps.code}-{words.code}",
            max(steps.on, words.on),
            is_withdrawn,
            may_be_mounted=self.releases.of(name, tag).decision.mark.is_released,
        )
