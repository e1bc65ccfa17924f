from picture_samples import disc, drawn, messages

from signage.check.picture_rules.live_area import RULE


def test_drawing_at_the_left_edge_is_found():
    (message,) = messages(RULE, drawn(disc(2, 48, 3)))
    assert "margin at the left" in message


def test_a_side_that_is_declared_as_cropped_may_be_reached():
    assert messages(RULE, drawn(disc(2, 48, 3), cropped=["left"])) == []


def test_another_side_that_is_declared_does_not_help():
    assert len(messages(RULE, drawn(disc(2, 48, 3), cropped=["right"]))) == 1
