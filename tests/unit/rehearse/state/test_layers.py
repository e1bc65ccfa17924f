"""What lies over what."""

import pytest

from signage.model.garment import Garment
from signage.rehearse.state.layers import Layers
from signage.rehearse.state.people import Worn


def garment(name, covers, over=(), **fields):
    return Garment(id=name, name=name, kind="other", covers=tuple(covers.split()), over=over, **fields)


KIT = {
    g.id: g
    for g in (
        garment("shirt", "trunk arms"),
        garment("vest", "trunk"),
        garment("gown", "trunk arms", ("shirt", "vest")),
        garment("apron", "trunk", ("gown",)),
        garment("glove", "hands"),
        garment("sleeve", "arms wrists", ("glove",)),
        garment("scarf", "neck trunk"),
        garment("badge", "trunk", parallel=True),
    )
}
LAYERS = Layers(KIT)


def test_what_is_declared_lies_over():
    assert LAYERS.lies_over("gown", "shirt")
    assert not LAYERS.lies_over("shirt", "gown")


def test_a_layer_between_passes_it_on_where_both_cover_the_same_part():
    assert LAYERS.lies_over("apron", "shirt")


def test_declared_without_a_shared_part():
    assert LAYERS.lies_over("sleeve", "glove")


def test_covering_counts_only_what_is_worn():
    assert LAYERS.covering("shirt", {"shirt", "apron"}) == ("apron",)
    assert LAYERS.covering("shirt", {"shirt"}) == ()


@pytest.mark.parametrize(
    ("name", "worn", "exposed"),
    [
        ("shirt", {"shirt", "gown"}, False),
        ("shirt", {"shirt", "apron"}, True),
        ("gown", {"gown", "apron"}, True),
        ("shirt", {"shirt"}, True),
        ("vest", {"vest", "gown"}, False),
        ("vest", {"vest", "gown", "apron"}, False),
        ("vest", {"vest", "apron"}, True),
    ],
)
def test_exposed_is_what_has_a_part_with_nothing_over_it(name, worn, exposed):
    assert LAYERS.is_exposed(name, worn) is exposed


class TestWhatComesOffBrushesOverWhatNothingHides:
    """Nothing that stays on lies between; what lies between hides only the parts that it covers."""

    def met(self, leaving, *staying):
        wearing = {key: Worn(KIT[key], None) for key in staying}
        return LAYERS.met_beneath(Worn(KIT[leaving], None), wearing)

    def test_the_layer_between_keeps_it_off(self):
        assert self.met("apron", "shirt", "gown") == {"gown"}

    def test_without_a_layer_between(self):
        assert self.met("apron", "shirt") == {"shirt"}

    def test_two_beneath_side_by_side(self):
        assert self.met("gown", "shirt", "scarf") == {"shirt", "scarf"}

    def test_declared_over_it_without_a_shared_part(self):
        assert self.met("sleeve", "glove") == {"glove"}


def test_outermost_at_a_part_of_the_body():
    assert LAYERS.outermost_at("trunk", ["shirt", "gown", "apron"]) == ("apron",)
    assert LAYERS.outermost_at("arms", ["shirt", "gown", "apron"]) == ("gown",)
    assert LAYERS.outermost_at("eyes", ["shirt"]) == ()
    assert LAYERS.outermost_at("trunk", ["shirt", "scarf"]) == ("shirt", "scarf"), "no order is declared"


def test_unknown_order():
    assert LAYERS.is_order_unknown("scarf", "gown")
    assert not LAYERS.is_order_unknown("apron", "shirt")
    assert not LAYERS.is_order_unknown("badge", "gown"), "declared not to overlap"
    assert not LAYERS.is_order_unknown("glove", "gown"), "no part in common"


def test_circles_are_found_and_do_no_harm():
    kit = {
        "a": garment("a", "trunk", ("b",)),
        "b": garment("b", "trunk", ("c",)),
        "c": garment("c", "trunk", ("a",)),
        "d": garment("d", "trunk", ("d", "unknown")),
        "e": garment("e", "trunk", ("a",)),
    }
    layers = Layers(kit)
    assert layers.circles(["e"]) == [("a", "b", "c")]
    assert layers.circles(["d"]) == [("d",)]
    assert Layers(KIT).circles(KIT) == []
    assert layers.is_exposed("a", {"a", "b", "c"}) is False
