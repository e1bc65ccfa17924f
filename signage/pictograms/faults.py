"""The faults that a scene file can have, each with its code, its reason and its cure."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.place import Place
from signage.ground.problem import Problem, Severity


@dataclass(frozen=True, slots=True)
class SceneFault:
    """A kind of fault: its code, its name, what it is, why it is refused, one example and the cure."""

    code: str
    name: str
    what: str
    why: str
    example: str
    cure: str

    @property
    def severity(self) -> Severity:
        """A scene that cannot be drawn blocks every sheet."""
        return Severity.S1

    def at(self, place: Place, message: str, hint: str = "") -> Problem:
        """A problem of this kind at a place; the hint is the fault's own cure unless one is given."""
        return Problem(self.code, self.name, self.severity, message, hint or self.cure, place)


SCENE = SceneFault(
    "PIC-1",
    "scene-unreadable",
    "A scene file is no YAML, or a key or value in it is not one that scenes have.",
    "A scene that is read in part would be drawn without the part that carries its meaning.",
    "colour: red in a layer",
    "See docs/pictures.md for the keys of a scene and their forms.",
)
LAYER = SceneFault(
    "PIC-2",
    "layer-undrawable",
    "A layer names a part that does not exist, or gives it an argument that it cannot use.",
    "The picture would lack the layer without a word.",
    "part: hand-opne",
    "See docs/pictures.md for the parts and their arguments.",
)
FOCUS = SceneFault(
    "PIC-3",
    "focus-unclear",
    "The focus of a scene names no layer, or more than one.",
    "A reader finds the item of the step by its colour; two coloured items are two steps.",
    "focus: apron in a scene whose layers are person and arrow",
    "Give the item of the step one layer, and further pieces of it the key belongs_to.",
)
ACCENT = SceneFault(
    "PIC-4",
    "two-accents",
    "A layer other than the focus is painted in the accent.",
    "The accent says: this is the item of the step. Two of them leave the reader to guess.",
    "style: accent on the bin of a scene whose focus is the apron",
    "Only the focus is painted in the accent: give the others ink, tone or paper.",
)

RULES: tuple[SceneFault, ...] = (SCENE, LAYER, FOCUS, ACCENT)
"""Every fault in the order of its code, for explanations."""
