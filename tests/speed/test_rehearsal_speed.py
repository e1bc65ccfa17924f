"""How fast a protocol is rehearsed; run on request with ``pytest tests/speed -s``."""

from dataclasses import replace
from time import process_time

import pytest
from rehearsal_edits import demo_library, layered_protection

from signage.rehearse.rehearsal import find, rehearse
from signage.rehearse.state.setting import prepare, schedule_of
from signage.rehearse.variations.stress_review import review_stress
from signage.rehearse.variations.study import study_protocol


def seconds_of(work, times):
    """Seconds of one core, whatever else the machine does."""
    work()
    start = process_time()
    for _ in range(times):
        work()
    return (process_time() - start) / times


def test_one_rehearsal_takes_single_digit_milliseconds():
    protocol = layered_protection()
    seconds = seconds_of(lambda: rehearse(demo_library(), protocol), 50)
    speed = f"{len(protocol.steps) / seconds:,.0f} steps a second, {seconds * 1000:.2f} ms a rehearsal"
    print(f"\n{speed}")  # noqa: T201 - what is asked for
    assert seconds < 0.010


def in_rows(protocol, times):
    """The protocol so many times in a row, each with identifiers of its own."""
    phases = (
        replace(
            phase,
            id=f"{phase.id}-{number}",
            steps=tuple(replace(step, id=f"{step.id}-{number}") for step in phase.steps),
        )
        for number in range(times)
        for phase in protocol.phases
    )
    return replace(protocol, phases=tuple(phases))


def seconds_alone(protocol):
    """One order, rehearsed from its beginning to its end without a trace."""
    setting, schedule = prepare(demo_library(), protocol), schedule_of(protocol)
    return seconds_of(lambda: find(setting, schedule), 20)


@pytest.mark.parametrize(("times", "most"), [(1, 0.8), (5, 0.4)])
def test_a_study_costs_less_than_rehearsing_each_of_its_orders_alone(times, most):
    """The longer the protocol, the smaller the part of it that other orders walk anew."""
    protocol = in_rows(layered_protection(), times)
    one = seconds_alone(protocol)
    study = seconds_of(lambda: study_protocol(demo_library(), protocol), 2)
    orders = 2 * len(protocol.steps) - 1
    ratio = study / (orders * one)
    print(f"\n{study * 1000:.0f} ms for {orders} orders of {len(protocol.steps)} steps: {ratio:.2f} of alone")  # noqa: T201 - as above
    assert ratio < most
    assert study < 0.5


def test_every_single_slip_costs_less_than_a_fifth_of_rehearsing_each_alone():
    protocol = layered_protection()
    one = seconds_alone(protocol)
    seconds = seconds_of(lambda: review_stress(demo_library(), protocol), 1)
    orders = sum(review_stress(demo_library(), protocol).stress.rehearsed.values())
    ratio = seconds / (orders * one)
    print(f"\n{seconds:.2f} s for {orders} orders with their reasons: {ratio:.2f} of alone")  # noqa: T201 - as above
    assert ratio < 0.2
    assert seconds < 2
