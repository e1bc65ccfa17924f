import demo
import pytest

from signage.compose.arrangement import Kind, cut_after, numbered_steps, zone_parts


def parts(phase):
    protocol = demo.context().protocol
    found = next(each for each in protocol.phases if each.id == phase)
    return zone_parts(numbered_steps(protocol, found))


def numbers(steps):
    return [numbered.number for numbered in steps]


def test_small_steps_hang_under_the_big_step_that_they_follow():
    dirty = parts("take-off")[0]
    hung = {module.big.number: numbers(module.hanging) for module in dirty.modules}
    assert hung[3] == [4, 5]
    assert hung[6] == [7, 8]
    assert hung[9] == [10]


def test_steps_before_the_first_big_one_are_gates_of_their_zone():
    dirty, clean = parts("take-off")
    assert numbers(dirty.gates) == [1, 2]
    assert numbers(clean.gates) == [21]
    assert {gate.kind for gate in (*dirty.gates, *clean.gates)} == {Kind.GATE}


def test_a_zone_without_a_big_step_is_a_part_of_gates_only():
    anteroom, room = parts("put-on")
    assert numbers(anteroom.gates) == [1, 2, 3, 4]
    assert numbers(room.gates) == [17]
    assert room.modules == ()


@pytest.mark.parametrize("phase", ["put-on", "take-off"])
def test_no_step_is_lost_or_merged(phase):
    found = [numbered.number for part in parts(phase) for numbered in part.steps]
    assert found == list(range(1, len(found) + 1))


@pytest.mark.parametrize("count", range(1, 12))
def test_a_cut_keeps_every_step_once_and_marks_what_goes_on(count):
    whole = parts("take-off")
    first, second = cut_after(whole, count)
    joined = [numbered.number for part in (*first, *second) for numbered in part.steps]
    assert joined == [numbered.number for part in whole for numbered in part.steps]
    assert sum(len(part.modules) for part in first) == count
    is_inside_zone = first[-1].zone == second[0].zone
    assert second[0].is_continued == is_inside_zone
