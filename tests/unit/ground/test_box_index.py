from hypothesis import given
from hypothesis import strategies as st

from signage.ground.box_index import BoxIndex
from signage.ground.geometry import Box

sides = st.floats(0, 60).map(lambda value: round(value, 1))
places = st.floats(-20, 200).map(lambda value: round(value, 1))
boxes = st.builds(Box, places, places, sides, sides)


@given(st.lists(boxes, max_size=30), boxes, st.floats(0, 5))
def test_the_index_finds_what_asking_each_box_finds(all_boxes, place, reach):
    near = [number for number, box in enumerate(all_boxes) if min(place.overlap(box)) >= -reach]
    assert BoxIndex(all_boxes).near(place, reach) == near
