from picture_samples import block, disc, drawn, messages

from signage.check.picture_rules.accent_share import RULE


def test_too_little_is_found():
    (message,) = messages(RULE, drawn(disc(48, 48, 2, "accent")))
    assert message.startswith("picture sample: accent-share is ")


def test_too_much_is_found():
    assert len(messages(RULE, drawn(block(10, 10, 70, 70, "accent")))) == 1


def test_a_share_within_the_range_is_left_alone():
    assert messages(RULE, drawn(disc(48, 48, 12, "accent"))) == []
