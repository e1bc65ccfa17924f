import pytest

from signage.drawing.marks import Group, Page, PathMark, Sheet
from signage.ground.geometry import Box, rectangle
from signage.impose.fold import fold_eight, leaves


def booklet(is_right_to_left=False, count=8):
    pages = tuple(Page(74.25, 105, (PathMark(rectangle(Box(0, 0, 1 + i, 1))),), 5) for i in range(count))
    return Sheet("pocket-checklist", "p", "en", "t", "", "K7M2", is_right_to_left, pages, "stem")


@pytest.mark.parametrize("is_right_to_left", [False, True])
def test_panels_lie_back_to_back_as_in_a_booklet(is_right_to_left):
    # one-sheet eight-page fold: leaves (1,2) (3,4) (5,6) (7,8); imposition arithmetic, mindprod.com
    assert leaves(is_right_to_left) == {frozenset(p) for p in ((1, 2), (3, 4), (5, 6), (7, 8))}


def panel_boxes(sheet):
    groups = [m for m in sheet.pages[0].marks if isinstance(m, Group) and m.role == "panel"]
    return {int(g.name): (g.transform.box(g.box), g.transform) for g in groups}


def test_left_to_right_rows():
    boxes = panel_boxes(fold_eight(booklet(), 297, 210, "A4"))
    lower = sorted((box.x, n) for n, (box, _) in boxes.items() if box.y > 100)
    upper = sorted((box.x, n) for n, (box, _) in boxes.items() if box.y < 100)
    assert [n for _, n in lower] == [8, 1, 2, 3]
    assert [n for _, n in upper] == [7, 6, 5, 4]


def test_right_to_left_mirrors_the_columns():
    boxes = panel_boxes(fold_eight(booklet(is_right_to_left=True), 297, 210, "A4"))
    lower = sorted((box.x, n) for n, (box, _) in boxes.items() if box.y > 100)
    assert [n for _, n in lower] == [3, 2, 1, 8]


def test_upper_row_stands_on_its_head_and_is_not_mirrored():
    boxes = panel_boxes(fold_eight(booklet(), 297, 210, "A4"))
    for number in (4, 5, 6, 7):
        transform = boxes[number][1]
        assert transform.a == transform.d == -1
        assert not transform.mirrors


def test_panels_tile_the_paper():
    boxes = [box for box, _ in panel_boxes(fold_eight(booklet(), 297, 210, "A4")).values()]
    assert sum(box.width * box.height for box in boxes) == pytest.approx(297 * 210)


def test_reading_order_is_that_of_the_numbers():
    sheet = fold_eight(booklet(), 297, 210, "A4")
    assert [m.name for m in sheet.pages[0].marks if getattr(m, "role", "") == "panel"] == list("12345678")


def test_other_numbers_of_panels_are_refused():
    with pytest.raises(ValueError, match="eight panels, not 7"):
        fold_eight(booklet(count=7), 297, 210, "A4")
