from picture_samples import block, drawn, messages

from signage.check.picture_rules.thin_lines import RULE


def test_what_a_layer_above_leaves_of_a_block_is_found():
    (message,) = messages(RULE, drawn(block(20, 20, 40, 40), block(21.2, 10, 40, 60, "paper")))
    assert "thinner than 1.6" in message


def test_a_rest_that_can_be_printed_is_left_alone():
    assert messages(RULE, drawn(block(20, 20, 40, 40), block(23, 10, 40, 60, "paper"))) == []
