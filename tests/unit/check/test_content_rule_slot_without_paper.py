from dataclasses import replace

import pytest
from content_samples import found, library, subject, ward, with_ward

from signage.check.content_rules.slot_without_paper import RULE


def with_slot(**sides):
    slot = replace(ward().slots[0], **sides)
    return slot, subject(with_ward(replace(ward(), slots=(slot,))))


@pytest.mark.parametrize("sides", [(210, 297), (297, 210), (300, 420)])
def test_a_wall_that_holds_a4_on_either_side_is_large_enough(sides):
    assert found(RULE, with_slot(width=sides[0], height=sides[1])[1]) == []


@pytest.mark.parametrize("sides", [(60, 420), (209, 296)])
def test_a_wall_too_small_for_the_smallest_paper(sides):
    slot, looked_at = with_slot(width=sides[0], height=sides[1])
    (problem,) = found(RULE, looked_at)
    assert f"is {sides[0]} mm by {sides[1]} mm; the smallest paper for it is A4" in problem.message
    assert problem.place == slot.at("width")


def test_a_paper_that_the_ward_cannot_print_does_not_count():
    slot = replace(ward().slots[0], width=220, height=300)
    only_a3 = replace(ward().printers[1], papers=("A3",))
    narrow = replace(ward(), slots=(slot,), printers=(only_a3,))
    (problem,) = found(RULE, subject(with_ward(narrow)))
    assert "the smallest paper for it is A3" in problem.message
    assert found(RULE, subject(library())) == []
