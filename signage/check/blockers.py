"""Why a sheet must not be printed at all, not even as a draft."""

from __future__ import annotations

from signage.check.sheet_rules.missing_glyph import MISSING_GLYPH
from signage.check.sheet_rules.overflow import TEXT_OVERFLOW
from signage.compose.part_names import missing_glyph_message, overflow_message
from signage.drawing.marks import Sheet, texts_of
from signage.text.paragraph import shape_paragraph
from signage.words.rules import RULE_OF
from signage.words.script_font import script_without_font
from signage.words.wording import Wording

MOST_GLYPHS = 5
"""Characters without a glyph that one refusal names; a language without a font has hundreds."""


def reasons_not_to_print(sheet: Sheet, wording: Wording) -> tuple[str, ...]:
    """Sentences for the person; empty when nothing stands against printing a draft.

    Text that overflows and characters without a glyph are refused on every sheet; all other rules
    are findings of ``signage check``. Each sentence begins with the place of the entry in the wording of its
    language that it is about.
    """
    found: dict[str, None] = {}
    for overflow in sheet.overflows:
        found[_where(wording, overflow.message, overflow.text, sheet) + overflow_message(overflow)] = None
    if found:
        found[TEXT_OVERFLOW.cure] = None
    missing: dict[str, None] = {}
    for page in sheet.pages:
        for mark, _box in texts_of(page):
            for glyph in shape_paragraph(mark.text, mark.language, mark.weight, wording.fonts).missing:
                message = missing_glyph_message(glyph.character, mark.role, mark.text)
                missing[_where(wording, mark.message, mark.text, sheet) + message] = None
    unseen = script_without_font(wording.tag, wording.fonts) if missing else None
    if unseen is not None:
        return (f"{unseen[0].upper()}{unseen[1:]}.", RULE_OF["WD-39"].cure)
    if missing:
        shown = list(missing)[:MOST_GLYPHS]
        left = len(missing) - len(shown)
        found.update(dict.fromkeys(shown))
        if left:
            found[f"{left} more like these."] = None
        found[MISSING_GLYPH.cure] = None
    return tuple(found)


def _where(wording: Wording, text: str | None, line: str, sheet: Sheet) -> str:
    place = wording.place_of(text or wording.context_of(line, sheet.protocol))
    return f"{place}: " if place.path else ""
