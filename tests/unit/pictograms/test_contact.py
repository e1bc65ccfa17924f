from signage.drawing.marks import FormMark, groups_of, walk
from signage.drawing.roles import GroupRole
from signage.pictograms.contact import contact_page
from signage.pictograms.palette import MONO
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES


def test_every_picture_stands_in_its_own_cell():
    names = PICTURES.names[:7]
    page = contact_page(PICTURES, names, side=20, columns=3, gap=2)
    placed = groups_of(page, GroupRole.PICTURE)
    assert [group.name for group, _ in placed] == list(names)
    boxes = [box for _, box in placed]
    for index, box in enumerate(boxes):
        assert box.right <= page.width
        assert box.bottom <= page.height
        assert all(min(box.overlap(other)) <= 0 for other in boxes[index + 1 :])


def test_without_a_palette_each_picture_has_the_colour_of_its_theme():
    page = contact_page(PICTURES, ["apron-on", "apron-off"])
    keys = [mark.form.key for mark, _ in walk(page.marks) if isinstance(mark, FormMark)]
    assert keys == ["picture-apron-on-don", "picture-apron-off-doff"]


def test_a_palette_paints_all_pictures():
    page = contact_page(PICTURES, ["apron-on", "apron-off"], MONO)
    keys = [mark.form.key for mark, _ in walk(page.marks) if isinstance(mark, FormMark)]
    assert keys == ["picture-apron-on-mono", "picture-apron-off-mono"]
