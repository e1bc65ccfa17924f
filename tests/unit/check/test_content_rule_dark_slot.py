from dataclasses import replace

from content_samples import found, subject, ward, with_ward

from signage.check.content_rules.dark_slot import RULE


def with_light(light):
    slot = replace(ward().slots[0], light=light)
    return slot, subject(with_ward(replace(ward(), slots=(slot,))))


def test_a_wall_in_the_dark():
    slot, looked_at = with_light(2.0)
    (problem,) = found(RULE, looked_at)
    assert "has 2 lux; at least 20 are wanted" in problem.message
    assert problem.place == slot.at("light")


def test_a_corridor_at_night_is_read():
    assert found(RULE, with_light(20.0)[1]) == []
