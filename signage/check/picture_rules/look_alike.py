"""Two pictures that are taken for one another at a glance."""

from collections.abc import Iterator
from functools import lru_cache

from signage.check.picture_rule import PictureRule, PictureSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule
from signage.pictograms.kit.nodes import CompiledLayer
from signage.pictograms.legibility import DISTINCT, distance, thumbnail
from signage.pictograms.palette import DON
from signage.pictograms.scan import Grid

LOOK_ALIKE = Rule(
    code="PC-10",
    name="look-alike",
    severity=S2,
    what=(
        "The mean difference of two pictures of a library, at 24 by 24 points, blurred and without colour, "
        f"is at least {DISTINCT:g} of the way from black to white."
    ),
    why="Whoever takes one step for another puts on or takes off the wrong thing.",
    example="Lower strap and upper strap differ by only 0.041.",
    cure="Change the view or the pose of one; if they are meant to look alike, name it under alike.",
)


def find(subject: PictureSubject) -> Iterator[Problem]:
    """One problem for each other picture that looks the same; each pair is told once."""
    scene = subject.scene
    own = _thumbnail(subject.layers)
    for other in subject.others:
        name = other.scene.name
        if name <= scene.name or name in scene.alike or scene.name in other.scene.alike:
            continue
        found = distance(own, _thumbnail(other.compiled()))
        if found < DISTINCT:
            yield subject.problem(LOOK_ALIKE, f"differs from {name} by only {found:.3f}")


@lru_cache(maxsize=1024)
def _thumbnail(layers: tuple[CompiledLayer, ...]) -> Grid:
    return thumbnail(layers, DON)


RULE = PictureRule(LOOK_ALIKE, find)
