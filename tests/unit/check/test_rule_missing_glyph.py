from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.missing_glyph import RULE
from signage.drawing.marks import TextMark


def test_a_character_without_a_glyph_is_named_with_its_code_point():
    def spoil(mark):
        if isinstance(mark, TextMark) and mark.message == "layered-protection/hood-off/text":
            return replace(mark, text=mark.text + " \u2610")
        return mark

    problems = found(RULE, edited(demo.sheet(phase="take-off"), spoil), demo.context())
    assert len(problems) == 1
    assert "U+2610" in problems[0].message
    assert problems[0].step == "hood-off"


def test_every_script_of_the_demo_is_whole():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="put-on"), demo.context(tag))
