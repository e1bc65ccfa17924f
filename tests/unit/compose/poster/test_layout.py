import pytest

from signage.compose.arrangement import Kind, Module, NumberedStep, ZonePart
from signage.compose.papers import paper_of
from signage.compose.poster.layout import cut_sheets, head_of, lay_out, merged_rows, rows_of
from signage.compose.poster.measures import grid_of, measures_of
from signage.model.library import Action, Step

MEASURES = measures_of(paper_of("A3"), footer=20.0, qr_least=20.0)


def numbered(number, zone, kind=Kind.BIG):
    step = Step(id=f"s{number}", text="", picture="", actions=(Action(verb="don"),))
    return NumberedStep(number, step, kind, zone)


def part(zone, first, cards, strips=0, gates=()):
    modules = tuple(
        Module(numbered(first + index, zone), tuple(numbered(100 + index, zone) for _ in range(strips)))
        for index in range(cards)
    )
    return ZonePart(zone, tuple(numbered(gate, zone, Kind.GATE) for gate in gates), modules)


def laid(parts, columns, has_note=False):
    return lay_out([tuple(parts)], columns, MEASURES, lambda _part: has_note).pages[0]


def zones_by_row(rows):
    return [[(segment.part, len(segment.modules)) for segment in row] for row in rows]


def test_cards_fill_rows_and_a_zone_may_end_inside_one():
    rows = rows_of([part("dirty", 1, 8), part("clean", 9, 4)], 6)
    assert zones_by_row(rows) == [[(0, 6)], [(0, 2), (1, 4)]]


def test_the_last_segment_of_a_row_reaches_to_its_end():
    rows = rows_of([part("dirty", 1, 5)], 4)
    assert [segment.columns for row in rows for segment in row] == [4, 4]


def test_a_zone_without_cards_has_a_row_of_its_own():
    rows = rows_of([part("anteroom", 1, 3), part("room", 4, 0, gates=(4,)), part("dirty", 5, 2)], 4)
    assert zones_by_row(rows) == [[(0, 3)], [(1, 0)], [(2, 2)]]


def test_rows_share_a_panel_only_where_both_are_of_one_zone_from_end_to_end():
    two_rows = rows_of([part("dirty", 1, 8), part("clean", 9, 4)], 4)
    assert [len(band) for band in merged_rows(two_rows)] == [2, 1]
    mixed = rows_of([part("dirty", 1, 2), part("clean", 3, 4)], 3)
    assert zones_by_row(mixed) == [[(0, 2), (1, 1)], [(1, 3)]]
    assert [len(band) for band in merged_rows(mixed)] == [1, 1]


def test_cards_of_a_mixed_row_never_stand_on_the_ground_of_the_zone_before():
    page = laid([part("dirty", 1, 2), part("clean", 3, 4)], 3)
    grounds = [(panel.zone, [len(s.modules) for s in panel.segments]) for panel in page.panels]
    assert grounds == [("dirty", [2]), ("clean", [1]), ("clean", [3])]
    dirty, clean, _ = page.panels
    assert dirty.x + dirty.width < clean.x
    assert clean.is_inside_row
    assert [panel.is_continued for panel in page.panels] == [False, False, True]


@pytest.mark.parametrize("columns", [2, 3, 4, 6])
@pytest.mark.parametrize("strips", [0, 2])
def test_panels_fill_the_space_between_title_and_footer(columns, strips):
    page = laid([part("dirty", 1, 7, strips, gates=(50, 51)), part("clean", 9, 5)], columns)
    last = page.bands[-1][0]
    assert page.bands[0][0].y == pytest.approx(MEASURES.top)
    assert last.y + last.height == pytest.approx(MEASURES.footer_top - MEASURES.footer_gap)
    tops = [band[0].y for band in page.bands]
    assert tops == sorted(tops)


def test_strips_take_their_height_from_all_tiles_alike():
    plain = laid([part("dirty", 1, 8)], 4).tile
    hung = laid([part("dirty", 1, 8, strips=1)], 4).tile
    assert plain - hung == pytest.approx(MEASURES.strip)


@pytest.mark.parametrize("columns", [2, 3, 4, 5, 6])
def test_columns_are_equal_and_stay_inside_the_margins(columns):
    grid = grid_of(MEASURES, columns)
    gaps = {round(after - before, 6) for before, after in zip(grid.starts, grid.starts[1:], strict=False)}
    assert gaps == {round(grid.width + grid.gutter, 6)}
    assert grid.starts[0] > MEASURES.margin + MEASURES.rail
    assert grid.end(columns - 1) < MEASURES.width - MEASURES.margin


@pytest.mark.parametrize("columns", [1, 2, 3, 4, 6])
@pytest.mark.parametrize("gates", [0, 1, 2, 4])
def test_no_two_things_of_a_head_share_a_place(columns, gates):
    head = head_of(columns, gates, has_note=True, measures=MEASURES)
    slots = [head.name, *head.gates, *([head.note] if head.note else [])]
    assert len(head.gates) == gates
    for index, slot in enumerate(slots):
        assert slot.column + slot.columns <= columns
        assert slot.y + slot.height <= head.height + 1e-6
        for other in slots[index + 1 :]:
            is_beside = (
                slot.column + slot.columns <= other.column or other.column + other.columns <= slot.column
            )
            is_above = slot.y + slot.height <= other.y or other.y + other.height <= slot.y
            assert is_beside or is_above


def test_as_many_gates_as_columns_stand_in_one_row_below_the_name():
    head = head_of(4, 4, has_note=False, measures=MEASURES)
    assert {gate.y for gate in head.gates} == {head.gates[0].y}
    assert [gate.column for gate in head.gates] == [0, 1, 2, 3]
    assert head.name.y + head.name.height <= head.gates[0].y


def test_gates_beside_a_name_never_come_below_it():
    head = head_of(3, 4, has_note=False, measures=MEASURES)
    assert all(gate.column > 0 for gate in head.gates)


@pytest.mark.parametrize(("sheets", "shares"), [(1, [12]), (2, [6, 6]), (3, [4, 4, 4]), (5, [3, 3, 2, 2, 2])])
def test_sheets_share_the_cards_as_equally_as_can_be(sheets, shares):
    cut = cut_sheets((part("dirty", 1, 8), part("clean", 9, 4)), sheets)
    assert [sum(len(each.modules) for each in page) for page in cut] == shares


def test_a_zone_cut_by_a_sheet_goes_on_with_a_head_but_without_its_gates():
    cut = cut_sheets((part("dirty", 1, 8, gates=(50,)), part("clean", 9, 4)), 2)
    layout = lay_out(cut, 3, MEASURES, lambda _part: False)
    first = next(layout.pages[1].panels)
    assert first.zone == "dirty"
    assert first.is_continued
    assert first.gates == ()


def test_larger_paper_enlarges_everything_but_nothing_shrinks_below_the_small_scale():
    a1, a4 = (measures_of(paper_of(name), 20.0, 10.0) for name in ("A1", "A4"))
    assert a1.scale == 2
    assert a1.strip == 2 * MEASURES.strip
    assert a4.scale == 0.85
    assert a4.margin >= 10


def test_the_title_band_grows_where_a_long_address_needs_a_larger_code():
    measures = measures_of(paper_of("A4"), 20.0, qr_least=30.0)
    assert measures.title - 8 * measures.scale >= 30.0 - 1e-9
    assert measures.top == pytest.approx(measures.margin + measures.title + measures.title_gap)


def test_empty_places_are_counted():
    assert lay_out([(part("dirty", 1, 5),)], 4, MEASURES, lambda _part: False).empty_cells == 3
    assert lay_out([(part("dirty", 1, 8),)], 4, MEASURES, lambda _part: False).empty_cells == 0
