from picture_samples import block, drawn, messages

from signage.check.picture_rules.narrow_gaps import RULE


def test_a_gap_of_six_tenths_of_a_unit_is_found():
    (message,) = messages(RULE, drawn(block(10, 10, 20, 60), block(30.6, 10, 20, 60)))
    assert "gaps narrower than 1.0 unit" in message


def test_a_gap_of_two_units_stays_open():
    assert messages(RULE, drawn(block(10, 10, 20, 60), block(32, 10, 20, 60))) == []
