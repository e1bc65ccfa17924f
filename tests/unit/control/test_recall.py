from datetime import date

import demo
from register_samples import DAY

from signage.control.recall import Cause, outcome_of, recall_set, unused, walk
from signage.model.copies import Copy, Event, EventKind, Spot, states_of
from signage.model.current_sheet import CurrentSheet

NEXT = date(2026, 12, 20)


def _copy(number, locale="en", whole="old", subject="clean-hands"):
    return Copy(number, "poster rub", subject, locale, "AAAA-BBBB", whole, "none", DAY, "icn")


def _events(*rows):
    return [
        Event(index, number, EventKind(kind), DAY, "porter", "", spot)
        for index, (number, kind, spot) in enumerate(rows, start=1)
    ]


def _at(slot="", learner=""):
    return Spot("lantern-bay" if slot else "", slot, learner)


CURRENT = {
    ("clean-hands", "en"): CurrentSheet("clean-hands", "en", "new", may_be_mounted=True, may_be_drawn=True),
    ("clean-hands", "ar"): CurrentSheet("clean-hands", "ar", None),
    ("contact-room", "en"): CurrentSheet("contact-room", "en", "old", is_withdrawn=True),
}


def test_a_walk_passes_each_zone_once_by_the_nearest_door():
    wards = demo.project().library.wards
    assert walk(wards["lantern-bay"]) == (
        "corridor", "anteroom", "room", "dirty-side", "clean-side", "waste-room",
    )  # fmt: skip
    assert walk(wards["quay-ward"]) == ("corridor", "room", "at-door")


def test_what_is_recalled_comes_in_walking_order_with_its_cause():
    copies = [_copy(f"LB-000{n}-X") for n in range(1, 6)]
    copies += [_copy("LB-0006-X", "ar"), _copy("LB-0007-X", subject="contact-room"), _copy("LB-0008-X")]
    copies += [_copy("LB-0009-X", whole="new")]
    events = _events(
        ("LB-0001-X", "mounted", _at("s4")),
        ("LB-0002-X", "mounted", _at("door-a")),
        ("LB-0003-X", "mounted", _at(learner="L10")),
        ("LB-0004-X", "mounted", _at(learner="L9")),
        ("LB-0005-X", "mounted", _at("s1")),
        ("LB-0006-X", "mounted", _at("s2")),
        ("LB-0007-X", "mounted", Spot("quay-ward", "door")),
        ("LB-0009-X", "mounted", _at("s3")),
        ("LB-0005-X", "audited", Spot()),
        ("LB-0005-X", "removed", Spot()),
    )
    states = states_of(copies, events)
    found = recall_set(demo.project().library, states, CURRENT)
    assert [(str(each.state.spot), each.cause, each.has_successor) for each in found] == [
        ("lantern-bay/door-a", Cause.REPLACED, True),
        ("lantern-bay/s2", Cause.NOT_IN_FORCE, False),
        ("lantern-bay/s4", Cause.REPLACED, True),
        ("quay-ward/door", Cause.WITHDRAWN, False),
        ("learner L9", Cause.REPLACED, True),
        ("learner L10", Cause.REPLACED, True),
    ]
    assert [state.copy.number for state in unused(states, CURRENT)] == ["LB-0008-X"]
    outcome = outcome_of(demo.project().library, states, events, CURRENT, "clean-hands")
    assert [state.copy.number for state in outcome.done] == ["LB-0005-X"]
    assert (len(outcome.open), round(outcome.share, 2), outcome.oldest) == (5, 0.17, DAY)
    told = outcome_of(demo.project().library, states, events, CURRENT, "clean-hands", ["LB-0005-X"])
    assert told.done == ()
