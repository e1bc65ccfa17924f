"""Contrast against published pairs of WCAG 2.x calculators, and the tokens of the sheets."""

import pytest

from signage.compose.theme import CARE, DOFF, DON, INK, INK_2, PAPER, PLAIN
from signage.ground.colour import contrast_ratio, relative_luminance


@pytest.mark.parametrize(
    ("text", "ground", "ratio"),
    [
        ("#000000", "#FFFFFF", 21.0),  # WCAG 2.x definition
        ("#767676", "#FFFFFF", 4.5422),  # published as 4.54
        ("#FFFF00", "#FFFFFF", 1.0738),  # published as 1.07
        ("#0000FF", "#FFFFFF", 8.5925),  # published as 8.59
        ("#0000FF", "#FF0000", 2.1489),  # published as 2.15
        ("#E5E5E5", "#AABB00", 1.698093107780376),  # published to 15 digits
        ("#FF8100", "#64003A", 5.235369975583679),  # published to 15 digits
        ("#FF7F50", "#000000", 8.4036),  # a wiki publishes 4.66 for this pair, which is wrong
    ],
)
def test_published_pairs(text, ground, ratio):
    assert contrast_ratio(text, ground) == pytest.approx(ratio, abs=0.005)
    assert contrast_ratio(ground, text) == pytest.approx(ratio, abs=0.005)


def test_published_luminance():
    assert relative_luminance("#FF8100") == pytest.approx(0.36960513804637335, abs=1e-9)


@pytest.mark.parametrize("theme", [DON, DOFF, CARE, PLAIN], ids=lambda theme: theme.name)
def test_every_text_colour_of_a_theme_reaches_aaa(theme):
    # WCAG 2.2, 1.4.6: 7 to 1 for text
    assert contrast_ratio(INK, PAPER) >= 7
    assert contrast_ratio(INK_2, PAPER) >= 7
    assert contrast_ratio(theme.deep, PAPER) >= 7
    assert contrast_ratio(INK, theme.tint) >= 7


def test_time_on_the_care_tint():
    assert contrast_ratio(CARE.deep, CARE.tint) >= 4.5  # WCAG 2.2, 1.4.3
