from dataclasses import replace

from content_samples import found, library, subject, with_protocol

from signage.check.content_rules.undecided_event import RULE


def told(**fields):
    return [problem.message for problem in found(RULE, subject(with_protocol(**fields)))]


def test_who_goes_into_the_room_has_decided_what_the_alarm_the_full_bin_and_nobody_at_the_door_mean():
    for name in ("contact-room", "layered-protection"):
        (message,) = told(name=name, hazards={})
        assert message.endswith("says nothing of 'fire-alarm', 'bin-full', 'observer-missing'."), name
        known = library().protocols[name].hazards
        for event in ("fire-alarm", "bin-full", "observer-missing"):
            (message,) = told(name=name, hazards={each: known[each] for each in known if each != event})
            assert message.endswith(f"says nothing of '{event}'."), (name, event)


def test_no_bin_and_no_observer_leave_the_alarm():
    protocol = library().protocols["contact-room"]
    going_in, _ = protocol.phases
    people = tuple(person for person in protocol.people if person.role != "observer")
    (message,) = told(hazards={}, phases=(going_in,), people=people)
    assert message.endswith("says nothing of 'fire-alarm'.")


def test_the_demo_has_decided_and_who_stays_outside_need_not():
    assert found(RULE, subject()) == []
    assert told(name="spill", hazards={}) == []
    branch = {
        name: replace(each, local_policy=None, branch="spill")
        for name, each in library().protocols["contact-room"].hazards.items()
    }
    assert told(hazards=branch) == []
