"""Measured widths are those of the lines that are set."""

import pytest
from samples import SAMPLES
from text_samples import shape_paragraph


@pytest.mark.parametrize("language", sorted(SAMPLES))
@pytest.mark.parametrize("width", [1.1, 3.0, 6.0])
def test_the_measure_of_a_part_is_the_width_of_its_line(language, width):
    paragraph = shape_paragraph(SAMPLES[language], language, 700)
    for line in paragraph.lines(width, balanced=False):
        assert paragraph.measure.width(line.start, line.end) == pytest.approx(line.width, abs=1e-9)


def test_blanks_alone_have_no_width():
    assert shape_paragraph("a   b", "en", 400).measure.width(1, 4) == 0.0


def test_advances_grow_with_the_index():
    measure = shape_paragraph("wash hands", "en", 400).measure
    before = [measure.before(i) for i in range(11)]
    assert before == sorted(before)
    assert before[-1] == pytest.approx(shape_paragraph("wash hands", "en", 400).width)
