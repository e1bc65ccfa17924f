from dataclasses import replace

import demo
from sheet_edits import found

from signage.check.sheet_rules.reading_distance import RULE


def with_slot(distance, papers=("A3",)):
    context = demo.context()
    slot = replace(
        context.ward.slots[0],
        sheets=("layered-protection/take-off",),
        reading_distance=distance,
        width=400,
        height=500,
    )
    ward = replace(context.ward, slots=(slot,))
    library = replace(context.library, wards={ward.id: ward}, papers=papers)
    return replace(context, library=library)


def test_an_a3_poster_does_not_carry_to_three_metres():
    # x-height .536 em at 15 minutes of arc (NUREG-0700 11.4.1.5): a 23 pt headline carries to about 1 m
    (problem,) = found(RULE, demo.sheet(phase="take-off"), with_slot(3000.0))
    assert "3.0 m" in problem.message
    assert problem.severity == "S3"


def test_it_carries_to_arm_length():
    assert not found(RULE, demo.sheet(phase="take-off"), with_slot(700.0))


def test_only_the_largest_paper_that_fits_the_slot_counts():
    assert not found(RULE, demo.sheet(phase="take-off", paper="A4"), with_slot(3000.0))
