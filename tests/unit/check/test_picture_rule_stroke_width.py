from picture_samples import drawn, messages

from signage.check.picture_rules.stroke_width import RULE
from signage.pictograms.kit.nodes import Stroke
from signage.pictograms.kit.paths import line


def test_a_strap_of_one_and_a_half_units_is_found():
    (message,) = messages(RULE, drawn(Stroke(line((10, 10), (50, 50)), 1.5)))
    assert message == "picture sample: a stroke of 1.50 units is thinner than 1.8"


def test_the_least_width_itself_is_allowed():
    assert messages(RULE, drawn(Stroke(line((10, 10), (50, 50)), 1.8))) == []
