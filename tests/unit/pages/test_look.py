"""Contrast of the looks, by the definition of WCAG 2.2; the ratios are computed in ``ground.colour``."""

import re

import pytest

from signage.drawing.themes import INK, PAPER
from signage.ground.colour import contrast_ratio
from signage.pages.look import LOOKS, stylesheet
from signage.text.metrics import metrics_of

GROUNDS = ("ground", "card", "care-ground", "dirty", "clean")


@pytest.mark.parametrize("name", LOOKS)
def test_letters_reach_seven_to_one_on_every_ground(name):
    look = LOOKS[name]  # WCAG 2.2, 1.4.6
    for ground in GROUNDS:
        for letters in ("ink", "ink-2"):
            assert contrast_ratio(look[letters], look[ground]) >= 7, (letters, ground)
    assert contrast_ratio(look["on-key"], look["key"]) >= 7
    assert contrast_ratio(look["on-filled"], look["filled"]) >= 7
    assert contrast_ratio(look["link"], look["ground"]) >= 7


@pytest.mark.parametrize("name", LOOKS)
def test_coloured_letters_reach_four_and_a_half_to_one(name):
    look = LOOKS[name]  # WCAG 2.2, 1.4.3
    for letters, grounds in (("care", ("card", "care-ground")), ("good", GROUNDS), ("bad", GROUNDS)):
        for ground in grounds:
            assert contrast_ratio(look[letters], look[ground]) >= 4.5, (letters, ground)


@pytest.mark.parametrize("name", LOOKS)
def test_edges_of_controls_reach_three_to_one(name):
    look = LOOKS[name]  # WCAG 2.2, 1.4.11
    for edge in ("line", "ink", "open", "care", "plain"):
        for ground in ("ground", "card"):
            assert contrast_ratio(look[edge], look[ground]) >= 3, (edge, ground)


def by_script(*scripts):
    return {script: metrics_of(script) for script in scripts}


def test_light_is_the_look_of_the_sheets():
    assert (LOOKS["light"]["ink"], LOOKS["light"]["ground"]) == (INK, PAPER)


def test_the_stylesheet_knows_no_left_and_no_right_and_loads_nothing_from_elsewhere():
    style = stylesheet(by_script("Latn", "Arab", "Ethi")).decode()
    body = style[style.index("box-sizing") :]
    for word in ("left", "right"):
        for line in body.splitlines():
            declared = line.split("{")[-1]
            assert f"{word}:" not in declared.replace(".right", "").replace(" ", ""), line
            assert f"-{word}" not in declared, line
    assert "http" not in style
    assert "@import" not in style


def test_scripts_keep_their_own_line_distance():
    style = stylesheet(by_script("Latn", "Arab")).decode()
    assert "[data-script=Arab]{--script-size:1.08" in style
    assert "[data-script=Deva]" not in style


def test_strong_contrast_darkens_the_item_of_a_picture_to_three_to_one():
    style = stylesheet(by_script("Latn")).decode()
    fills = re.findall(r"data-look=contrast\] \.picture\.(\w+) :is\(\.accent,\.mark\)\{fill:(#\w+)\}", style)
    assert {name for name, _ in fills} == {"plain", "don", "doff", "hands"}
    for name, fill in fills:
        assert contrast_ratio(fill, PAPER) >= 3, name  # WCAG 2.2, 1.4.11
