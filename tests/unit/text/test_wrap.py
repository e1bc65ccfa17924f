"""Balanced lines: as many as full ones, about equally long, no lonely word at the end."""

from itertools import product

from samples import SAMPLES
from text_samples import shape_paragraph

SENTENCE = "Wash your hands with soap and water before you close the door of the room"


def set_text(text, width, balanced=True, language="en"):
    lines = shape_paragraph(text, language, 400).lines(width, balanced=balanced)
    return [text[line.start : line.end].strip() for line in lines], lines


def test_balanced_lines_are_as_many_and_not_wider():
    wrong = []
    for language, width in product(sorted(SAMPLES), [5.0, 7.0, 9.5, 13.0, 18.0]):
        _, full = set_text(SAMPLES[language], width, False, language)
        _, balanced = set_text(SAMPLES[language], width, True, language)
        widest = max(line.width for line in full) + 1e-6
        if len(balanced) != len(full) or max(line.width for line in balanced) > widest:
            wrong.append((language, width))
    assert wrong == []


def test_balanced_lines_are_more_equal():
    def spread(lines):
        return max(line.width for line in lines) - min(line.width for line in lines)

    for width in (9.0, 12.0, 16.0, 20.0, 30.0):
        _, full = set_text(SENTENCE, width, balanced=False)
        _, balanced = set_text(SENTENCE, width)
        assert spread(balanced) <= spread(full) + 1e-6, width


def test_two_lines_are_cut_near_the_middle():
    assert set_text("Take off outer gloves and boots", 12.0, balanced=False)[0] == [
        "Take off outer gloves and",
        "boots",
    ]
    assert set_text("Take off outer gloves and boots", 12.0)[0] == ["Take off outer", "gloves and boots"]


def test_no_single_short_word_ends_a_text_of_several_lines():
    for width in [8 + tenth / 10 for tenth in range(80)]:
        lines, measured = set_text(SENTENCE, width)
        longest = max(line.width for line in measured)
        if len(lines) > 1:
            assert len(lines[-1].split()) > 1 or measured[-1].width >= 0.4 * longest


def test_a_short_last_word_stays_alone_where_nothing_else_fits():
    text = "a decontamination of"
    width = shape_paragraph("decontamination", "en", 400).width + 0.1
    assert set_text(text, width)[0] == ["a", "decontamination", "of"]


def test_forced_lines_are_balanced_each_for_itself():
    text = "Take off outer gloves and boots\nThen wash"
    assert set_text(text, 12.0)[0] == ["Take off outer", "gloves and boots", "Then wash"]


def test_a_text_with_a_broken_word_stays_as_full_lines_set_it():
    assert (
        set_text("an unbreakableunbreakable x", 6.0)[0]
        == set_text("an unbreakableunbreakable x", 6.0, False)[0]
    )


def test_one_line_stays_one_line():
    assert set_text("Close the door", 50.0)[0] == ["Close the door"]
