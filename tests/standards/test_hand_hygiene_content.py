"""The demo's hand technique against the published order and times.

Order and durations: WHO Guidelines on Hand Hygiene in Health Care, 2009, as quoted by secondary pages
(hand rub 20 to 30 s with six rubbing movements; hand wash 40 to 60 s with the same six).
"""

import demo

PUBLISHED = ["palms", "backs", "between", "finger-backs", "thumbs", "fingertips"]


def parts(phase):
    protocol = demo.project().library.protocols["clean-hands"]
    steps = next(p for p in protocol.phases if p.id == phase).steps
    return [step.action.part for step in steps if step.action.part]


def seconds(phase):
    protocol = demo.project().library.protocols["clean-hands"]
    return next(p for p in protocol.phases if p.id == phase).seconds


def test_rubbing_follows_the_published_order():
    assert parts("rub") == ["product", *PUBLISHED, "dry"]


def test_washing_uses_the_same_six_movements_between_soap_and_rinse():
    assert parts("wash") == ["wet", "product", *PUBLISHED, "rinse", "dry", "close-tap"]


def test_times_lie_in_the_published_ranges_and_washing_takes_longer():
    assert 20 <= seconds("rub") <= 30
    assert 40 <= seconds("wash") <= 60


def test_every_time_on_a_sheet_comes_from_policy_with_a_source():
    policy = demo.project().library.policy
    assert policy["min-rub"].value == seconds("rub")
    assert policy["min-wash"].value == seconds("wash")
    assert policy["min-rub"].source
    assert policy["min-wash"].owner
