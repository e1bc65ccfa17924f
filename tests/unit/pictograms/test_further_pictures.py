"""The pictures of the hand technique, and of kit that the other protocols put on and take off."""

import itertools

import pytest

from signage.pictograms.legibility import distance, distinctness_findings, thumbnail
from signage.pictograms.palette import HANDS, MONO
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

MOVEMENTS = [
    "technique-palms",
    "technique-backs",
    "technique-between",
    "technique-finger-backs",
    "technique-thumbs",
    "technique-fingertips",
]
"""The six rubbing movements that hand rub and hand wash share (WHO Guidelines on Hand Hygiene in Health
Care, 2009; read in a list that credits them, not in the original)."""

FURTHER_KIT = ["apron-simple", "gloves", "gown", "mask", "shield"]

NEGATIVE = ["no-touch-face", "no-touch-front", "no-shake", "no-mix"]


def roles_of(name):
    return {operation.role.partition(".")[0] for operation in PICTURES.scene(name).operations}


@pytest.mark.parametrize("name", MOVEMENTS)
def test_a_rubbing_movement_shows_its_motion_and_what_is_rubbed(name):
    scene = PICTURES.scene(name)
    assert scene.theme == "hands"
    assert {"arrow", "item"} <= roles_of(name)


@pytest.mark.parametrize(("first", "second"), list(itertools.combinations(MOVEMENTS, 2)))
def test_rubbing_movements_cannot_be_taken_for_one_another(first, second):
    one, other = (thumbnail(PICTURES.compiled(name), HANDS) for name in (first, second))
    assert distance(one, other) > 0.12


@pytest.mark.parametrize("item", FURTHER_KIT)
def test_further_kit_differs_on_and_off_without_colour(item):
    names = (f"{item}-on", f"{item}-off")
    assert [PICTURES.scene(name).theme for name in names] == ["don", "doff"]
    assert distinctness_findings({name: thumbnail(PICTURES.compiled(name), MONO) for name in names}) == []
    for name in names:
        assert "arrow" in roles_of(name)


@pytest.mark.parametrize("name", NEGATIVE)
def test_what_is_forbidden_stands_in_a_ring_and_says_so(name):
    assert "prohibition" in roles_of(name)
    assert PICTURES.scene(name).alternative.startswith("Do not ")
