"""How fast a protocol is rehearsed; run on request with ``pytest tests/speed -s``."""

from time import process_time

from rehearsal_edits import demo_library, layered_protection, new_step, with_step_after

from signage.rehearse.rehearsal import rehearse
from signage.rehearse.variations.alternatives import free_swaps, leave_one_out
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


def test_leaving_out_and_exchanging_every_step_takes_half_a_second():
    protocol = layered_protection()

    def work():
        leave_one_out(demo_library(), protocol)
        free_swaps(demo_library(), protocol)

    seconds = seconds_of(work, 3)
    count = 2 * len(protocol.steps) - 1
    print(f"\n{seconds * 1000:.0f} ms for {count} rehearsals in other arrangements")  # noqa: T201 - as above
    assert seconds < 0.5


def test_a_study_of_sixty_steps_takes_well_under_two_seconds():
    protocol = layered_protection()
    for number in range(60 - len(protocol.steps)):
        rub = new_step(f"rub-{number}", "hygiene", agent="rub", layer="skin", seconds=30)
        protocol = with_step_after(protocol, "rub-before-kit", rub)
    assert len(protocol.steps) == 60
    seconds = seconds_of(lambda: study_protocol(demo_library(), protocol), 3)
    print(f"\n{seconds * 1000:.0f} ms for the whole study of 60 steps")  # noqa: T201 - as above
    assert seconds < 1
