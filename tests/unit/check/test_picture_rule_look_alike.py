from picture_samples import disc, drawn, messages

from signage.check.picture_rules.look_alike import RULE
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES


def like(name, **more):
    """The picture of a scene that ships, under another name."""
    return drawn(*PICTURES.scene(name).nodes, name="a-copy", **more)


def test_a_copy_of_a_picture_is_found():
    (message,) = messages(RULE, like("hood-off", others=("hood-off", "hand-rub")))
    assert message == "picture a-copy: differs from hood-off by only 0.000"


def test_a_pair_that_is_meant_to_look_alike_is_left_alone():
    assert messages(RULE, like("hood-off", others=("hood-off",), alike=["hood-off"])) == []


def test_each_pair_is_told_once():
    late = drawn(*PICTURES.scene("hood-off").nodes, name="the-copy", others=("hood-off",))
    assert messages(RULE, late) == []


def test_another_picture_is_left_alone():
    assert messages(RULE, drawn(disc(48, 48, 30), name="a-disc", others=("hood-off", "hand-rub"))) == []
