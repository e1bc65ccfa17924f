"""Texts cut and shaped in the fonts that come with the programme."""

from signage.text import itemize as items
from signage.text import paragraph
from signage.text.font_set import BUNDLED_FONTS


def itemize(text, language, weight, base_level):
    return items.itemize(text, language, weight, base_level, BUNDLED_FONTS)


def shape_paragraph(text, language, weight, right_to_left=None):
    return paragraph.shape_paragraph(text, language, weight, BUNDLED_FONTS, right_to_left)
