"""What the parts of sheets are called when a message speaks of them."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping

from signage.drawing.marks import Overflow
from signage.drawing.roles import GroupRole, TypeRole
from signage.ground.quotation import quoted

PART_NAMES: Mapping[TypeRole | GroupRole, str] = {
    TypeRole.TITLE: "title",
    TypeRole.OVER: "line above the title",
    TypeRole.PLATE: "title on the cover",
    TypeRole.DRAFT: "draft mark",
    TypeRole.DRAFT_SENTENCE: "draft sentence",
    TypeRole.RIBBON: "sentence along the edges",
    TypeRole.KEY_WORD: "word of the rule box",
    TypeRole.KEY_RULE: "rule box",
    TypeRole.RULE: "rule",
    TypeRole.ZONE: "name of a zone",
    TypeRole.NOTE: "note of a zone",
    TypeRole.NUMBER: "number of a step",
    TypeRole.BAR: "number of a step",
    TypeRole.STRIP: "headline of a narrow step",
    TypeRole.HEADLINE: "headline of a step",
    TypeRole.ROW: "headline in the list of steps",
    TypeRole.DETAIL: "detail of a step",
    TypeRole.WHY: "reason of a step",
    TypeRole.CAUTION: "caution of a step",
    TypeRole.CONDITION: "condition of a step",
    TypeRole.CONTAINER_NAME: "name of a bin",
    TypeRole.STEP_TIME: "time of a step",
    TypeRole.STRIP_DETAIL: "detail of a narrow step",
    TypeRole.STRIP_CAUTION: "caution of a narrow step",
    TypeRole.STRIP_CONDITION: "condition of a narrow step",
    TypeRole.STRIP_STEP_TIME: "time of a narrow step",
    TypeRole.STRIP_CONTAINER_NAME: "name of a bin",
    TypeRole.CRITICAL: "mark of a critical step",
    TypeRole.LEGEND: "explanation of a mark",
    TypeRole.TIME: "time",
    TypeRole.LABEL: "label",
    TypeRole.CODE: "code of the protocol",
    TypeRole.CODE_TITLE: "title beside the code",
    TypeRole.CONTROL: "control text at the foot",
    TypeRole.CONTROL_HEAD: "word beside the code",
    TypeRole.LOCAL_POLICY: "sentence about local policy",
    TypeRole.RULER_WORDS: "sentence beside the ruler",
    TypeRole.CONTAINER: "letter of a bin",
    TypeRole.CONTAINER_WORD: "word under a bin",
    TypeRole.CONTENTS: "list of what goes where",
    TypeRole.MEMORY_AID: "sentence on the cover",
    TypeRole.CAUTIONS: "sentence on the cover about cautions",
    TypeRole.SHEET: "number of the sheet",
    TypeRole.PANEL_TITLE: "head of a panel",
    GroupRole.PICTURE: "picture of a step",
    TypeRole.HEAD: "head",
    TypeRole.KEY_NUMBER: "key number",
    TypeRole.RULE_NUMBER: "rule number",
    TypeRole.SCENE_NAME: "scene name",
    TypeRole.SCENE_NUMBER: "scene number",
    TypeRole.QUESTION: "question",
    TypeRole.QUESTION_NUMBER: "question number",
    TypeRole.FIELD: "field",
    TypeRole.SENTENCE: "sentence",
    TypeRole.MEANING: "meaning",
    TypeRole.CATEGORY: "category",
    TypeRole.MARK: "mark",
}


def part_name(role: TypeRole | GroupRole) -> str:
    """The plain name of a type role or of a picture."""
    return PART_NAMES[role]


def overflow_message(overflow: Overflow) -> str:
    """What is said of a text that does not fit, and of a picture that text leaves no room."""
    if overflow.role is GroupRole.PICTURE:
        return (
            f"The words leave the {part_name(overflow.role)} {overflow.excess_mm:.1f} mm too little room, "
            "at the smallest size they may have."
        )
    return (
        f"The {part_name(overflow.role)} {quoted(overflow.text)} is {overflow.excess_mm:.1f} mm too large "
        "for its place, at the smallest size it may have."
    )


def missing_glyph_message(character: str, role: TypeRole, text: str) -> str:
    """What is said of a character that no font draws; a tab is a control character, not a letter."""
    if len(character) == 1 and unicodedata.category(character) == "Cc":
        code = f"U+{ord(character):04X}"
        return f"The control character {code} stands in the {part_name(role)} {quoted(text)}."
    return f"No font has '{character}' (U+{ord(character[0]):04X}) in the {part_name(role)} {quoted(text)}."
