from datetime import date

import demo
import pytest
from register_samples import DAY, add, mounted, new_copy

from signage.control.register.changes import MOUNT_COLUMNS, begin, plan
from signage.control.register.store import open_register
from signage.ground.errors import UnreadableInputError
from signage.ground.problem import with_problems
from signage.model.copies import EventKind
from signage.model.current_sheet import CurrentSheet
from signage.trials.ward_table import read_ward_table, typed

CURRENT = {
    ("layered-protection", "en"): CurrentSheet(
        "layered-protection", "en", "h2", "AAAA-BBBB", date(2026, 11, 20), may_be_mounted=True
    ),
    ("clean-hands", "en"): CurrentSheet("clean-hands", "en", "h1", "CCCC-DDDD", is_withdrawn=True),
    ("contact-room", "en"): CurrentSheet("contact-room", "en", "h1", "EEEE-FFFF"),
}


@pytest.fixture
def register(tmp_path):
    with open_register(tmp_path / "register.db") as opened:
        yield opened


def _copies(register, *wanted):
    return [
        copy.number
        for copy in register.add_copies(
            [new_copy(subject, locale, whole) for subject, locale, whole in wanted], DAY, "icn"
        )
    ]


def _planned(register, kind, *rows):
    changes = begin(demo.project().library, CURRENT, register.states(), "porter", DAY)
    events, problems = with_problems(plan(kind, rows, changes))
    return events, [f"{problem.code} {problem.message} {problem.hint}" for problem in problems]


def test_a_released_copy_is_mounted_moved_replaced_and_lost(register):
    old, new = _copies(register, *[("layered-protection", "en", "h2")] * 2)
    for kind, row, states in (
        ("mount", typed(number=old, slot="s1"), ["mounted", "printed"]),
        ("mount", typed(number=old.lower(), slot="lantern-bay/s3"), ["mounted", "printed"]),
        ("replace", typed(number=old, by=new), ["removed", "mounted"]),
        ("remove", typed(number=old, destroyed="yes"), ["destroyed", "mounted"]),
        ("lost", typed(number=new, note="Looked behind every door."), ["destroyed", "lost"]),
    ):
        events, problems = _planned(register, kind, row)
        assert problems == []
        add(register, *events)
        assert [state.state for state in register.states()] == states
    assert [str(state.spot) for state in register.states()] == ["lantern-bay/s3"] * 2
    assert [event.kind.value for event in register.events()] == [
        "mounted", "mounted", "replaced", "removed", "mounted", "destroyed", "lost",
    ]  # fmt: skip


def test_only_what_is_released_today_may_be_mounted(register):
    wanted = (
        ("layered-protection", "en", "h1"),
        ("clean-hands", "en", "h1"),
        ("contact-room", "en", "h1"),
        ("layered-protection", "ar", "h2"),
    )
    rows = [typed(number=number, slot="lantern-bay/s1") for number in _copies(register, *wanted)]
    _, problems = _planned(register, "mount", *rows)
    assert [problem.split()[0] for problem in problems] == ["RG-8"] * 4
    for problem, words in zip(
        problems,
        ("AAAA-BBBB is in force since 2026-11-20", "its protocol is withdrawn", "it would be a draft",
         "no sign-off of it is in force"),
        strict=True,
    ):  # fmt: skip
        assert words in problem


def test_slips_and_contradictions_are_told_with_what_was_meant(register):
    (number,) = _copies(register, ("layered-protection", "en", "h2"))
    swapped = number[:3] + number[4] + number[3] + number[5:]
    swapped = swapped if swapped != number else f"{number[1]}{number[0]}{number[2:]}"
    wrong = number[:-3] + "9" + number[-2:]
    for kind, row, words in (
        ("mount", typed(number=swapped, slot="s1"), f"RG-4 '{swapped}' is no copy number"),
        ("mount", typed(number=wrong, slot="s1"), f"Did you mean {number}?"),
        ("mount", typed(number="", slot="s1"), "RG-4 The copy number is empty"),
        ("mount", typed(number=number, slot="S11"), "RG-7 There is no slot 'S11'. Did you mean 's1'?"),
        ("mount", typed(number=number), "RG-7 Neither a slot nor a learner"),
        ("mount", typed(number=number, slot="s1", learner="L1"), "RG-7 Both a slot and a learner"),
        ("mount", typed(number=number, learner="Maria"), "RG-7 'Maria' is not the number of a learner"),
        ("mount", typed(number=number, slot="s1", day="26.11.2026"), "RG-6 '26.11.2026' is no day"),
        ("mount", typed(number=number, slot="s1", day="2027-01-01"), "RG-6 '2027-01-01' is no day"),
        ("remove", typed(number=number), f"RG-9 Copy {number} is not mounted: it is printed"),
        ("remove", typed(number=number, destroyed="jes"), "RG-6 The destroyed 'jes' is unknown. Did you"),
        ("lost", typed(number=number), "RG-10 No note says where the lost copy was looked for."),
        ("replace", typed(number=number, by=number), "RG-9"),
    ):
        _, problems = _planned(register, kind, row)
        assert any(words in problem for problem in problems), (kind, words, problems)


def test_a_later_row_sees_what_an_earlier_one_changed(register):
    (number,) = _copies(register, ("layered-protection", "en", "h2"))
    add(register, mounted(number))
    rows = [typed(number=number), typed(number=number)]
    events, problems = _planned(register, "remove", *rows)
    assert [event.kind for event in events][:1] == [EventKind.REMOVED]
    assert [problem.split()[0] for problem in problems] == ["RG-9"]


def test_a_table_is_read_with_the_place_of_every_fault(register, tmp_path):
    (number,) = _copies(register, ("layered-protection", "en", "h2"))
    path = tmp_path / "mounted.csv"
    path.write_text(f"number;slot\nLB-0001-0;s1\n{number};s9x\n")
    changes = begin(demo.project().library, CURRENT, register.states(), "porter", DAY)
    _, problems = with_problems(plan("mount", read_ward_table(path, MOUNT_COLUMNS), changes))
    found = [(problem.code, problem.place.line, problem.place.column) for problem in problems]
    assert found == [("RG-4", 2, 1), ("RG-7", 3, 11)]


def test_columns_of_people_and_unknown_ones_are_refused(tmp_path):
    path = tmp_path / "table.csv"
    for header, code in (
        ("number,slot,Patient_Name", "RG-11"),
        ("number,temperature", "RG-11"),
        ("number,slott", "RG-2"),
        ("slot", "RG-2"),
        ("number,number", "RG-2"),
    ):
        path.write_text(f"{header}\n{','.join('x' * (header.count(',') + 1))}\n")
        with pytest.raises(UnreadableInputError) as caught:
            read_ward_table(path, MOUNT_COLUMNS)
        assert caught.value.problems[0].code == code, header
