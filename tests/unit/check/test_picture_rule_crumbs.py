from picture_samples import disc, drawn, messages

from signage.check.picture_rules.crumbs import RULE


def test_a_speck_of_paper_upon_ink_is_found():
    (message,) = messages(RULE, drawn(disc(40, 40, 20), disc(40, 40, 0.35, "paper")))
    assert "paper leaves a crumb" in message


def test_a_stray_bit_is_the_business_of_another_rule():
    assert messages(RULE, drawn(disc(40, 40, 20), disc(80, 80, 1))) == []
