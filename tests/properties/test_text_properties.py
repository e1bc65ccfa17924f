"""What must hold for any text, width and weight."""

from hypothesis import given, settings
from hypothesis import strategies as st
from samples import SAMPLES
from text_samples import itemize, shape_paragraph

from signage.text import paragraph as paragraphs
from signage.text import shape
from signage.text.bidi import levels
from signage.text.breaks import FORCED_BREAKS, grapheme_ends
from signage.text.itemize import DEFAULT_IGNORABLE, _runs_one_way

WORDS = sorted({word for sample in SAMPLES.values() for word in sample.split()})
ODDITIES = [
    " ", "  ", "\u00a0", "\n", "\u00ad", "\u200b", "\u200d", "\u2060", "\u2068", "\u2066A1\u2069", "\u2069",
    "20", "٢٠", "(", ")", "«", "1:9", "–", "😀", "\u0301", "\u064e", "\u13a0", "decontamination", "\r\n",
    "\t",
]  # fmt: skip

texts = st.lists(st.sampled_from([*WORDS, *ODDITIES, " ", " ", " "]), max_size=14).map("".join)
languages = st.sampled_from(sorted(SAMPLES))
widths = st.floats(0.3, 25.0)
directions = st.sampled_from([None, True, False])
quickly = settings(max_examples=150)


@quickly
@given(texts, languages, widths, directions, st.booleans())
def test_the_lines_put_together_are_the_text(text, language, width, direction, balanced):
    lines = shape_paragraph(text, language, 400, direction).lines(width, balanced=balanced)
    assert "".join(text[line.start : line.end] for line in lines) == text


@quickly
@given(texts, languages, widths, directions, st.booleans())
def test_no_line_is_wider_than_allowed_but_for_one_grapheme(text, language, width, direction, balanced):
    for line in shape_paragraph(text, language, 700, direction).lines(width, balanced=balanced):
        visible = text[line.start : line.end].strip()
        assert line.width <= width + 1e-5 or len(grapheme_ends(visible)) <= 1


@quickly
@given(texts, languages, widths, directions)
def test_balanced_lines_are_as_many_as_full_ones(text, language, width, direction):
    paragraph = shape_paragraph(text, language, 400, direction)
    full, balanced = paragraph.lines(width, balanced=False), paragraph.lines(width)
    assert len(balanced) == len(full)
    assert sum(line.breaks_word for line in balanced) == sum(line.breaks_word for line in full)


@quickly
@given(texts, languages, widths, directions, st.booleans())
def test_the_runs_of_a_line_hold_each_visible_character_once(text, language, width, direction, balanced):
    for line in shape_paragraph(text, language, 400, direction).lines(width, balanced=balanced):
        held = [i for run in line.runs for i in range(run.start, run.end)]
        shown = [i for i in held if text[i] not in DEFAULT_IGNORABLE]
        assert sorted(shown) == [
            i
            for i in range(line.start, line.end)
            if text[i] not in DEFAULT_IGNORABLE and text[i] not in FORCED_BREAKS
        ]
        for run in line.runs:
            assert all(run.start <= glyph.cluster < run.end for glyph in run.glyphs)


@quickly
@given(texts, languages, widths, directions)
def test_the_widths_of_a_line_add_up(text, language, width, direction):
    paragraph = shape_paragraph(text, language, 400, direction)
    for line in paragraph.lines(width):
        total = sum(run.advance for run in line.runs)
        assert line.width + line.lead <= total + 1e-6
        assert paragraph.is_right_to_left or line.lead == 0
        if paragraph.is_right_to_left:
            assert abs(line.width + line.lead - total) < 1e-6


@quickly
@given(texts, languages, st.integers(0, 1))
def test_items_hold_all_characters_but_forced_breaks_in_order(text, language, base_level):
    items = itemize(text, language, 400, base_level)
    held = [i for item in items for i in range(item.start, item.end)]
    assert held == sorted(set(held))
    left_out = set(range(len(text))) - set(held)
    assert all(text[i] in FORCED_BREAKS for i in left_out)


@settings(max_examples=60)
@given(texts, languages, st.lists(widths, min_size=1, max_size=12), directions)
def test_the_same_question_gives_the_same_answer_whatever_was_asked_before(text, language, asked, direction):
    paragraph = shape_paragraph(text, language, 400, direction)
    answers = [(paragraph.lines(width), paragraph.lines(width, balanced=False)) for width in asked]
    for width, answer in zip(asked, answers, strict=True):
        paragraphs.texts_in.cache_clear()
        shape._stretches_in.cache_clear()
        fresh = shape_paragraph(text, language, 400, direction)
        assert (fresh.lines(width), fresh.lines(width, balanced=False)) == answer


@quickly
@given(
    st.text("אבابپ\u064e ()[]<>.,:/+-%!\t\u200b\u00ad\u2060aé\u0301\u20682\u2069", max_size=20),
    st.integers(0, 1),
)
def test_the_short_way_for_texts_of_one_direction_agrees_with_the_whole_algorithm(text, base_level):
    if _runs_one_way(text, base_level):
        assert {level % 2 for level in levels(text, base_level)} <= {base_level}
        if base_level:
            assert set(levels(text, base_level)) <= {base_level}
