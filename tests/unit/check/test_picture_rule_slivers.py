from picture_samples import disc, drawn, messages

from signage.check.picture_rules.slivers import RULE


def test_a_stray_bit_beside_the_body_is_found():
    (message,) = messages(RULE, drawn(disc(40, 40, 20), disc(80, 80, 1)))
    assert "stands alone" in message


def test_a_crumb_upon_the_body_is_the_business_of_another_rule():
    assert messages(RULE, drawn(disc(40, 40, 20), disc(40, 40, 0.35, "paper"))) == []
