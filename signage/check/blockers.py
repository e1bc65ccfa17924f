"""Why a sheet must not be printed at all, not even as a draft."""

from __future__ import annotations

from signage.check.sheet_rules import missing_glyph
from signage.drawing.marks import Sheet, texts_of
from signage.text.paragraph import shape_paragraph


def reasons_not_to_print(sheet: Sheet) -> tuple[str, ...]:
    """Sentences for the person; empty when nothing stands against printing a draft.

    Text that overflows and characters without a glyph are refused on every sheet; all other rules
    are findings of ``signage check``.
    """
    reasons = [
        f"{overflow.role}: '{overflow.text}' is {overflow.excess_mm:.1f} mm too large for its box at the "
        f"smallest size it may have ({overflow.message or 'fixed text'}); shorten it or use a larger paper."
        for overflow in sheet.overflows
    ]
    missing: dict[str, None] = {}
    for page in sheet.pages:
        for mark, _box in texts_of(page):
            for glyph in shape_paragraph(mark.text, mark.language, mark.weight).missing:
                place = mark.message or mark.role
                sentence = (
                    f"'{glyph.character}' (U+{glyph.code_point:04X}) in {place} has no glyph in {glyph.font}."
                )
                missing[sentence] = None
    if missing:
        reasons += [*missing, missing_glyph.EXPLANATION.cure]
    return tuple(reasons)
