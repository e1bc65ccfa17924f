import re

import pytest
from demo import project

from signage.drawing.themes import CARE, DOFF
from signage.drawing.zone_patterns import PATTERN_PATHS
from signage.ground.geometry import Box, path_box
from signage.pages.container_sign import _TILES, _closed_shapes, container_sign, pattern_tile
from signage.pages.picture import PagePictures
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

PROTOCOL = project().library.protocols["layered-protection"]
SHOWN = PagePictures(PICTURES)
TAKE_OFF = PROTOCOL.phases[1]


def step(name):
    return next(each for each in TAKE_OFF.steps if each.id == name)


def test_a_picture_has_the_colour_of_its_phase_and_cleaning_hands_its_own():
    assert DOFF.accent in SHOWN.inline(SHOWN.key(step("hood-off"), TAKE_OFF, False), "x")
    assert CARE.accent in SHOWN.inline(SHOWN.key(step("rub-bare-hands"), TAKE_OFF, False), "x")


def test_only_travel_is_mirrored_and_only_from_right_to_left():
    assert PICTURES.scene("to-corridor").mirror == "with-layout"
    assert SHOWN.key(step("to-corridor"), TAKE_OFF, True).is_mirrored
    assert not SHOWN.key(step("to-corridor"), TAKE_OFF, False).is_mirrored
    assert not SHOWN.key(step("inner-gloves-off"), TAKE_OFF, True).is_mirrored


def test_what_a_picture_says_cannot_become_an_element():
    drawn = SHOWN.inline(SHOWN.key(step("hood-off"), TAKE_OFF, False), 'a "b" <script> & c')
    assert 'aria-label="a &#34;b&#34; &lt;script&gt; &amp; c"' in drawn
    assert "<script>" not in container_sign("bin", "<A>", "<script>")


def test_a_picture_file_stands_alone():
    data = SHOWN.file(SHOWN.key(step("hood-off"), TAKE_OFF, False)).decode()
    assert data.startswith("<svg xmlns=")
    assert "href" not in data
    assert len(data) < 30_000


@pytest.mark.parametrize("pattern", _TILES)
def test_a_pattern_repeats_without_a_seam(pattern):
    """What leaves the tile at one edge enters it at the other: moved by a tile, the drawing is the same."""
    tile = _TILES[pattern]
    wide = Box(-tile.width, -tile.height, 4 * tile.width, 4 * tile.height)
    shapes = [path_box(shape) for shape in _closed_shapes(PATTERN_PATHS[pattern](wide, 1.0))]
    for across, down in ((tile.width, 0.0), (0.0, tile.height)):
        seen = _cut(shapes, tile, 0, 0)
        assert seen == _cut(shapes, tile, across, down)
        assert seen


def _cut(shapes, tile, across, down):
    """The shapes inside the tile moved by so much, as rounded boxes cut at its edges."""
    cut = set()
    for box in shapes:
        left, top = max(box.x - across, 0.0), max(box.y - down, 0.0)
        right, bottom = min(box.right - across, tile.width), min(box.bottom - down, tile.height)
        if right - left > 1e-6 and bottom - top > 1e-6:
            cut.add(tuple(round(value, 4) for value in (left, top, right, bottom)))
    return cut


def test_tiles_are_small_and_measured_in_millimetres():
    for pattern in _TILES:
        data = pattern_tile(pattern).decode()
        assert len(data) < 6_000
        assert re.search(r'width="[\d.]+mm"', data)
