"""What the parts and the kinds of sheets are called when a message speaks of them."""

from __future__ import annotations

import unicodedata

from signage.drawing.marks import Overflow
from signage.ground.quotation import quoted

PART_NAMES = {
    "title": "title",
    "over": "line above the title",
    "plate": "title on the cover",
    "draft": "draft mark",
    "draft-sentence": "draft sentence",
    "ribbon": "sentence along the edges",
    "key-word": "word of the rule box",
    "key-rule": "rule box",
    "rule": "rule",
    "zone": "name of a zone",
    "note": "note of a zone",
    "number": "number of a step",
    "bar": "number of a step",
    "strip": "headline of a narrow step",
    "headline": "headline of a step",
    "row": "headline in the list of steps",
    "detail": "detail of a step",
    "why": "reason of a step",
    "caution": "caution of a step",
    "condition": "condition of a step",
    "container-name": "name of a bin",
    "step-time": "time of a step",
    "strip-detail": "detail of a narrow step",
    "strip-caution": "caution of a narrow step",
    "strip-condition": "condition of a narrow step",
    "strip-step-time": "time of a narrow step",
    "strip-container-name": "name of a bin",
    "critical": "mark of a critical step",
    "legend": "explanation of a mark",
    "time": "time",
    "label": "label",
    "code": "code of the protocol",
    "code-title": "title beside the code",
    "control": "control text at the foot",
    "control-head": "word beside the code",
    "local-policy": "sentence about local policy",
    "ruler-words": "sentence beside the ruler",
    "container": "letter of a bin",
    "container-word": "word under a bin",
    "contents": "list of what goes where",
    "memory-aid": "sentence on the cover",
    "cautions": "sentence on the cover about cautions",
    "sheet": "number of the sheet",
    "panel-title": "head of a panel",
    "picture": "picture of a step",
}


def part_name(role: str) -> str:
    """The plain name of a type role, with the role itself where it has none."""
    return PART_NAMES.get(role, role.replace("-", " "))


def overflow_message(overflow: Overflow) -> str:
    """What is said of a text that does not fit, and of a picture that text leaves no room."""
    if overflow.role == "picture":
        return (
            f"The words leave the {part_name('picture')} {overflow.excess_mm:.1f} mm too little room, "
            "at the smallest size they may have."
        )
    return (
        f"The {part_name(overflow.role)} {quoted(overflow.text)} is {overflow.excess_mm:.1f} mm too large "
        "for its place, at the smallest size it may have."
    )


def missing_glyph_message(character: str, role: str, text: str) -> str:
    """What is said of a character that no font draws; a tab is a control character, not a letter."""
    if len(character) == 1 and unicodedata.category(character) == "Cc":
        code = f"U+{ord(character):04X}"
        return f"The control character {code} stands in the {part_name(role)} {quoted(text)}."
    return f"No font has '{character}' (U+{ord(character[0]):04X}) in the {part_name(role)} {quoted(text)}."
