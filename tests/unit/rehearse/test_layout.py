"""The ward as a graph."""

from dataclasses import replace

import pytest
from rehearsal_edits import demo_library, found, layered_protection

from signage.ground.place import Place
from signage.model.library import Door
from signage.rehearse.layout import way_round
from signage.rehearse.rehearsal import rehearse

WARD = demo_library().wards["lantern-bay"]
REMOVAL = {"dirty-side", "clean-side"}


def with_doors(*more):
    doors = tuple(Door(start=start, end=end, place=Place("ward.yaml", 7)) for start, end in more)
    return replace(WARD, doors=(*WARD.doors, *doors))


def library_with_doors(*more):
    return replace(demo_library(), wards={WARD.id: with_doors(*more)})


def test_the_demo_ward_has_no_way_round():
    assert way_round(WARD, "room", REMOVAL) is None


@pytest.mark.parametrize(
    ("door", "way"),
    [(("room", "anteroom"), ("room", "anteroom")), (("room", "corridor"), ("room", "corridor"))],
)
def test_a_door_past_the_removal_is_found_with_its_way(door, way):
    assert way_round(with_doors(door), "room", REMOVAL) == way


def test_without_avoiding_anything_the_proper_way_is_found():
    assert way_round(WARD, "room", ()) == ("room", "dirty-side", "clean-side", "corridor")


def test_the_finding_points_at_the_door():
    result = rehearse(library_with_doors(("room", "anteroom")), layered_protection())
    (finding,) = result.findings
    assert (finding.code, finding.place) == ("ZN-6", Place("ward.yaml", 7))
    assert "Room to Anteroom" in finding.message


def test_a_door_from_one_zone_of_removal_back_is_no_way_round():
    assert found(layered_protection(), library_with_doors(("clean-side", "dirty-side"))) == []


def test_against_a_one_way_door_the_message_says_so():
    protocol = layered_protection()
    turned = replace(WARD, doors=(Door(start="dirty-side", end="room"), *WARD.doors[:2], *WARD.doors[3:]))
    library = replace(demo_library(), wards={WARD.id: turned})
    codes = {(f.code, f.step): f.message for f in rehearse(library, protocol).findings}
    assert "other way only" in codes["ZN-3", "to-dirty-side"]
