from picture_samples import block, disc, drawn, messages

from signage.check.picture_rules.ink_share import RULE


def test_too_little_is_found():
    (message,) = messages(RULE, drawn(disc(48, 48, 8), disc(20, 20, 16, "tone")))
    assert message.startswith("picture sample: ink-share is ")


def test_too_much_is_found():
    assert len(messages(RULE, drawn(block(3, 3, 90, 90)))) == 1


def test_a_share_within_the_range_is_left_alone():
    assert messages(RULE, drawn(disc(48, 48, 20))) == []
