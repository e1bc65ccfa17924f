import pytest

from signage.pictograms.compile import compile_operations
from signage.pictograms.kit.nodes import Blob, Patch, Stroke, closed, flatten, group
from signage.pictograms.kit.paths import ellipse, line, rounded_rectangle
from signage.pictograms.legibility import (
    accent_findings,
    balance_findings,
    distance,
    distinctness_findings,
    gap_findings,
    live_area_findings,
    palette_findings,
    sliver_findings,
    stroke_findings,
    thin_findings,
    thumbnail,
)
from signage.pictograms.palette import DON, Palette


def layers(*nodes):
    return compile_operations(flatten(nodes))


def rules(findings):
    return [finding.rule for finding in findings]


def test_a_stroke_below_the_floor_is_found():
    assert stroke_findings("p", list(flatten(Stroke(line((10, 10), (50, 50)), 1.8)))) == []
    (finding,) = stroke_findings("p", list(flatten(Stroke(line((10, 10), (50, 50)), 1.5))))
    assert (finding.measured, finding.limit) == (1.5, 1.8)


def test_a_gap_is_no_stroke():
    assert stroke_findings("p", list(flatten(Stroke(line((10, 10), (50, 50)), 1.0, "ground")))) == []


def test_a_thin_bar_is_found_even_if_no_stroke_declares_it():
    assert thin_findings("p", layers(Patch(rounded_rectangle(20, 20, 2.0, 50, 0)))) == []
    assert rules(thin_findings("p", layers(Patch(rounded_rectangle(20, 20, 1.2, 50, 0))))) == ["thin-line"]


def test_a_line_thinned_by_what_covers_it_is_found():
    covered = layers(
        Patch(rounded_rectangle(20, 20, 40, 40, 0)), Patch(rounded_rectangle(21.2, 10, 40, 60, 0), "paper")
    )
    assert rules(thin_findings("p", covered)) == ["thin-line"]


def test_a_gap_that_would_close_in_print_is_found():
    wide = layers(Patch(rounded_rectangle(10, 10, 20, 60, 0)), Patch(rounded_rectangle(32, 10, 20, 60, 0)))
    narrow = layers(
        Patch(rounded_rectangle(10, 10, 20, 60, 0)), Patch(rounded_rectangle(30.6, 10, 20, 60, 0))
    )
    assert gap_findings("p", wide) == []
    assert rules(gap_findings("p", narrow)) == ["narrow-gap"]


def test_a_stray_bit_is_found():
    body = Patch(ellipse(40, 40, 20))
    assert sliver_findings("p", layers(body, Patch(ellipse(80, 80, 2)))) == []
    found = sliver_findings("p", layers(body, Patch(ellipse(80, 80, 1))))
    assert rules(found) == ["sliver"]


def test_a_crumb_of_one_pigment_on_another_is_found():
    body = Patch(ellipse(40, 40, 20))
    assert rules(sliver_findings("p", layers(body, Patch(ellipse(40, 40, 0.35), "paper")))) == ["crumb"]


@pytest.mark.parametrize(
    ("x", "y", "side"), [(2, 48, "left"), (94, 48, "right"), (48, 2, "top"), (48, 94, "bottom")]
)
def test_drawing_in_the_margin_is_found_unless_declared(x, y, side):
    drawn = layers(Patch(ellipse(x, y, 3)))
    (finding,) = live_area_findings("p", drawn, frozenset())
    assert side in finding.message
    assert live_area_findings("p", drawn, frozenset({side})) == []


def test_too_little_and_too_much_drawing_is_found():
    assert "coverage" in rules(balance_findings("p", layers(Patch(ellipse(48, 48, 8)))))
    full = layers(Patch(rounded_rectangle(2, 2, 92, 92, 0)))
    assert {"coverage", "ink-share", "accent-share"} <= set(rules(balance_findings("p", full)))


def test_white_garments_do_not_count_as_drawing():
    suit = layers(Patch(ellipse(48, 48, 40), "paper"), Patch(ellipse(48, 48, 20)))
    assert "coverage" in rules(balance_findings("p", suit))


def test_accent_outside_the_item_is_found():
    stranger = group(Blob("accent", closed(ellipse(20, 20, 8))), role="bin")
    item = group(Blob("accent", closed(ellipse(60, 60, 8))), role="item")
    assert accent_findings("p", list(flatten(item))) == []
    (finding,) = accent_findings("p", list(flatten([item, stranger])))
    assert "'bin'" in finding.message


def test_two_colours_of_like_lightness_are_found():
    flat = Palette("flat", "#14202C", "#B9C6D2", "#CBD8E4", "#FFFFFF", "#B9C6D2", "#C2182B", "#177A3C")
    assert {"lightness-ladder", "accent-lightness"} <= set(rules(palette_findings(flat)))


def test_a_red_that_fades_into_the_outline_for_some_eyes_is_found():
    dull = Palette("dull", "#2C2014", "#0F86D2", "#CBD8E4", "#FFFFFF", "#0F86D2", "#5A1010", "#177A3C")
    assert "colour-vision" in rules(palette_findings(dull))


def test_two_pictures_that_look_alike_are_found():
    first = thumbnail(layers(Patch(ellipse(48, 48, 30))), DON)
    second = thumbnail(layers(Patch(ellipse(48, 48, 31))), DON)
    other = thumbnail(layers(Patch(rounded_rectangle(4, 60, 88, 30, 0))), DON)
    assert rules(distinctness_findings({"a": first, "b": second, "c": other})) == ["distinct"]


def test_the_distance_of_a_picture_to_itself_is_nothing():
    one = thumbnail(layers(Patch(ellipse(48, 48, 30))), DON)
    assert distance(one, one) == 0
