import pytest

from signage.ground.geometry import Box, mirroring, path_box, scaling, translation
from signage.pictograms.kit.nodes import (
    GAP,
    OUTLINE,
    Blob,
    Group,
    Patch,
    Stroke,
    closed,
    flatten,
    group,
    stroked,
)
from signage.pictograms.kit.paths import ellipse, line


def blob(style, **options):
    return Blob(style, closed(ellipse(48, 48, 10)), **options)


def test_a_thing_of_colour_gets_an_ink_outline_beneath_its_fill():
    outline, fill = flatten(blob("accent"))
    assert (outline.pigment, outline.width) == ("ink", 2 * OUTLINE)
    assert (fill.pigment, fill.width) == ("accent", 0)


def test_a_flat_thing_gets_a_gap_beneath_it_and_no_outline():
    halo, fill = flatten(blob("ink"))
    assert (halo.pigment, halo.width) == ("ground", 2 * GAP)
    assert (fill.pigment, fill.width) == ("ink", 0)


def test_all_members_are_painted_in_each_pass_so_that_they_melt():
    two = Blob("tone", (*closed(ellipse(40, 40, 5)), *stroked(4, line((40, 40), (60, 40)))))
    assert [operation.pigment for operation in flatten(two)] == ["ink", "ink", "tone", "tone"]


def test_scaling_grows_shapes_and_members_but_never_outlines():
    two = Blob("tone", (*closed(ellipse(0, 0, 5)), *stroked(4, line((0, 0), (20, 0)))))
    operations = list(flatten(group(two, transform=scaling(2))))
    assert path_box(operations[0].path).width == pytest.approx(20)
    assert operations[0].width == 2 * OUTLINE
    assert operations[1].width == 2 * 4 + 2 * OUTLINE
    assert operations[3].width == 2 * 4


def test_a_lining_is_paper_with_stripes_that_its_shape_cuts():
    operations = list(flatten(blob("lining")))
    stripes = [operation for operation in operations if operation.pigment == "mark"]
    assert operations[1].pigment == "paper"
    assert len(stripes) > 20
    assert all(stripe.within for stripe in stripes)


def test_fill_only_leaves_the_outline_out():
    (fill,) = flatten(blob("paper", only="fill"))
    assert fill.pigment == "paper"


def test_everything_in_the_item_counts_as_item():
    inner = group(blob("accent", role="glove"), Stroke(line((0, 0), (9, 9)), role="seam"), role="part")
    roles = {operation.role.partition(".")[0] for operation in flatten(group(inner, role="item"))}
    assert roles == {"item"}


def test_a_crop_moves_with_its_group():
    cropped = Group((Patch(ellipse(48, 48, 20)),), translation(10, 0), crop=Box(0, 0, 48, 96))
    (operation,) = flatten(group(cropped))
    ((edge,),) = operation.within
    assert path_box(edge.path).right == pytest.approx(58)


def test_an_upright_group_turns_back_about_its_own_x_when_mirrored():
    flag = Group((Patch(line((70, 10), (80, 10), (80, 20))),), upright=75)
    (plain,) = flatten(flag)
    (mirrored,) = flatten(group(flag, transform=mirroring(48)))
    shifted = [(x - (75 - (96 - 75)), y) for _, x, y in plain.path]
    assert [segment[1:] for segment in mirrored.path] == [pytest.approx(point) for point in shifted]


def test_other_groups_are_mirrored_as_they_stand():
    (mirrored,) = flatten(group(Patch(line((70, 10), (80, 20))), transform=mirroring(48)))
    assert [segment[1:] for segment in mirrored.path] == [(26, 10), (16, 20)]
