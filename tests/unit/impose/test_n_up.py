from signage.drawing.marks import Group, Page, PathMark, Sheet, walk
from signage.impose.n_up import four_up


def cards(count, is_right_to_left=False):
    pages = tuple(Page(105, 148, (), 7) for _ in range(count))
    return Sheet("step-cards", "p", "en", "t", "A6", "K7M2", is_right_to_left, pages, "stem")


def positions(page):
    return {
        m.name: (round(m.transform.e, 2), round(m.transform.f, 2))
        for m in page.marks
        if isinstance(m, Group) and m.role == "card"
    }


def test_four_cards_fill_a_sheet_and_the_rest_follows():
    sheet = four_up(cards(42), 210, 297, "A4")
    assert len(sheet.pages) == 11
    assert [len(positions(page)) for page in sheet.pages] == [4] * 10 + [2]


def test_cards_run_with_the_reading_direction():
    assert positions(four_up(cards(4), 210, 297, "A4").pages[0]) == {
        "1": (0, 0.25), "2": (105, 0.25), "3": (0, 148.75), "4": (105, 148.75),
    }  # fmt: skip
    mirrored = positions(four_up(cards(4, is_right_to_left=True), 210, 297, "A4").pages[0])
    assert mirrored["1"] == (105, 0.25)
    assert mirrored["2"] == (0, 0.25)


def test_cut_marks_stand_on_the_two_cuts_and_inside_the_card_margins():
    page = four_up(cards(4), 210, 297, "A4").pages[0]
    marks = next(m for m in page.marks if isinstance(m, Group) and m.role == "cut-marks")
    for mark, _ in walk(marks.marks):
        assert isinstance(mark, PathMark)
        (_, x0, y0), (_, x1, y1) = mark.path
        assert x0 == x1 == 105 or y0 == y1 == 148.5
        for x, y in ((x0, y0), (x1, y1)):
            assert (
                min(abs(x - edge) for edge in (0, 105, 210)) < 7
                or min(abs(y - e) for e in (0, 148.5, 297)) < 7
            )
