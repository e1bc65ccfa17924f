"""The faults that a scene file can have, each with its code, its reason and its cure."""

from __future__ import annotations

from signage.ground.rule import S1, Rule

SCENE = Rule(
    "PIC-1",
    "scene-unreadable",
    S1,
    "A scene file is no YAML, or a key or value in it is not one that scenes have.",
    "A scene that is read in part would be drawn without the part that carries its meaning.",
    "colour: red in a layer",
    "See docs/pictures.md for the keys of a scene and their forms.",
)
LAYER = Rule(
    "PIC-2",
    "layer-undrawable",
    S1,
    "A layer names a part that does not exist, or gives it an argument that it cannot use.",
    "The picture would lack the layer without a word.",
    "part: hand-opne",
    "See docs/pictures.md for the parts and their arguments.",
)
FOCUS = Rule(
    "PIC-3",
    "focus-unclear",
    S1,
    "The focus of a scene names no layer, or more than one.",
    "A reader finds the item of the step by its colour; two coloured items are two steps.",
    "focus: apron in a scene whose layers are person and arrow",
    "Give the item of the step one layer, and further pieces of it the key belongs_to.",
)
ACCENT = Rule(
    "PIC-4",
    "two-accents",
    S1,
    "A layer other than the focus is painted in the accent.",
    "The accent says: this is the item of the step. Two of them leave the reader to guess.",
    "style: accent on the bin of a scene whose focus is the apron",
    "Only the focus is painted in the accent: give the others ink, tone or paper.",
)
BOUNDS = Rule(
    "PIC-5",
    "beyond-bounds",
    S1,
    "A number, a count or the amount of drawing in a scene lies beyond what any picture needs.",
    "Outlines are joined by arithmetic that would take hours, and all memory, for what nobody can see.",
    "arc: [48, 48, 30, 0, 9000000]",
    "Look for a slip of the keys, or draw with fewer points; docs/pictures.md names the bounds.",
)

RULES: tuple[Rule, ...] = (SCENE, LAYER, FOCUS, ACCENT, BOUNDS)
"""Every fault in the order of its code, for explanations."""
