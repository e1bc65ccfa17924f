from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.lines import RULE
from signage.drawing.marks import TextMark


def test_a_third_line_of_a_headline_is_found():
    def repeat(mark):
        if isinstance(mark, TextMark) and mark.message == "layered-protection/hood-off/text":
            return replace(mark, lines=(mark.lines[0],) * 3)
        return mark

    problems = found(RULE, edited(demo.sheet(phase="take-off"), repeat), demo.context())
    assert any("3 lines" in problem.message for problem in problems)


def test_a_lone_last_word_is_found():
    def orphan(mark):
        if isinstance(mark, TextMark) and mark.role == "detail" and len(mark.lines) > 1:
            first, last = mark.lines[0], mark.lines[-1]
            run = last.runs[0]
            short = replace(run, glyphs=run.glyphs[:3])
            start = mark.text.rstrip().replace("\xa0", " ").rfind(" ") + 1
            return replace(mark, lines=(first, replace(last, runs=(short,), start=start, end=len(mark.text))))
        return mark

    assert found(RULE, edited(demo.sheet(phase="take-off"), orphan), demo.context())


def test_posters_of_the_demo_break_well():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="put-on"), demo.context(tag))
