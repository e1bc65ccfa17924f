"""What a rule over pictures is: it measures one scene and returns problems."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from signage.ground.problem import Problem
from signage.ground.rule import Rule

if TYPE_CHECKING:
    from signage.pictograms.kit.nodes import CompiledLayer
    from signage.pictograms.legibility import Finding
    from signage.pictograms.picture import Picture
    from signage.pictograms.picture_set import PictureSet
    from signage.pictograms.scene import Scene


@dataclass(frozen=True)
class PictureSubject:
    """A scene as it is painted; ``others`` are the pictures that may stand beside it."""

    scene: Scene
    layers: tuple[CompiledLayer, ...]
    others: tuple[Picture, ...] = ()

    def problem(self, rule: Rule, message: str) -> Problem:
        """A finding of a rule about this picture, at the place of its sentence in the scene's file."""
        return rule.problem(f"picture {self.scene.name}: {message}", self.scene.place)

    def problems(self, rule: Rule, findings: Iterable[Finding], measure: str = "") -> Iterator[Problem]:
        """The findings of a measure as problems; of one measure by its name where several come together."""
        for finding in findings:
            if not measure or finding.rule == measure:
                yield self.problem(rule, finding.message)


@dataclass(frozen=True)
class PictureRule:
    """A rule over one picture."""

    rule: Rule
    find: Callable[[PictureSubject], Iterable[Problem]]


def picture_subject(pictures: PictureSet, name: str, others: Iterable[str] = ()) -> PictureSubject:
    """The subject of a picture by its name, among others by theirs."""
    beside = tuple(pictures.picture(other) for other in others)
    return PictureSubject(pictures.scene(name), pictures.compiled(name), beside)
