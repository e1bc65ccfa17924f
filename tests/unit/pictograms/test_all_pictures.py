"""Every shipped picture against the measures of legibility, and every palette."""

import pytest

from signage.pictograms.legibility import (
    distinctness_findings,
    palette_findings,
    scene_findings,
    thumbnail,
)
from signage.pictograms.palette import MONO, PALETTES
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

SAME_ACT_ON_ANOTHER_LAYER = {
    "rub-inner-gloves/rub-outer-gloves",
    "sign-inner-glove/sign-outer-glove",
}
"""Pairs meant to look alike but for the fill and the cuff of the gloves; they never stand alone."""


def test_only_one_act_on_two_layers_is_declared_as_alike():
    declared = {
        "/".join(sorted((name, other))) for name in PICTURES.names for other in PICTURES.scene(name).alike
    }
    assert declared == SAME_ACT_ON_ANOTHER_LAYER


@pytest.mark.parametrize("name", PICTURES.names)
def test_a_picture_can_be_read_small_and_printed(name):
    scene = PICTURES.scene(name)
    findings = scene_findings(name, scene.operations, PICTURES.compiled(name), scene.cropped)
    assert [finding.message for finding in findings] == []


@pytest.mark.parametrize("palette", PALETTES.values(), ids=lambda palette: palette.name)
def test_a_palette_keeps_its_meanings_apart(palette):
    assert [finding.message for finding in palette_findings(palette)] == []


def test_no_two_pictures_look_alike_without_colour():
    thumbnails = {name: thumbnail(PICTURES.compiled(name), PALETTES["don"]) for name in PICTURES.names}
    alike = {finding.subject for finding in distinctness_findings(thumbnails)}
    assert alike - SAME_ACT_ON_ANOTHER_LAYER == set()


@pytest.mark.parametrize("item", ["apron", "boot-cover", "coverall", "goggles", "hood", "respirator"])
def test_on_and_off_differ_by_drawing_alone(item):
    thumbnails = {name: thumbnail(PICTURES.compiled(name), MONO) for name in (f"{item}-on", f"{item}-off")}
    assert distinctness_findings(thumbnails) == []


@pytest.mark.parametrize("item", ["apron", "boot-cover", "coverall", "goggles", "hood", "respirator"])
def test_every_item_moves_along_an_arrow(item):
    for name in (f"{item}-on", f"{item}-off"):
        assert any(operation.role == "arrow" for operation in PICTURES.scene(name).operations)
