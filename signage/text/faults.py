"""The fault that a font of a library can have."""

from __future__ import annotations

from signage.ground.rule import S1, Rule

UNUSABLE_FONT = Rule(
    "FN-1",
    "unusable-font",
    S1,
    "A file in content/fonts is no TrueType font, may not be read, or is named like a bundled font.",
    "The letters that it was put there for would be missing on every sheet.",
    "an OpenType font with PostScript outlines in content/fonts",
    "Put a TrueType font with its own file name there, or remove the file.",
)

RULES: tuple[Rule, ...] = (UNUSABLE_FONT,)
"""Every fault in the order of its code, for explanations."""
