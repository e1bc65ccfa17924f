from dataclasses import replace
from itertools import pairwise

import demo
import pytest

from signage.compose.arrangement import numbered_steps
from signage.compose.hand_technique.layout import lay_out_hands, parts_of
from signage.compose.hand_technique.poster import compose_hand_poster
from signage.compose.papers import paper_of
from signage.drawing.marks import groups_of, texts_of
from signage.drawing.roles import GroupRole
from signage.ground.errors import RefusedError

PAPERS = ("A4", "A4-landscape", "A3", "A1-landscape", "Letter", "Letter-landscape")
MOVEMENTS = ("palms", "backs", "between-fingers", "finger-backs", "thumbs", "fingertips")


def poster(phase, tag="en", paper="A4"):
    return demo.sheet("poster", tag, phase, paper, "clean-hands")


def page_of(phase, tag="en", paper="A4"):
    (page,) = poster(phase, tag, paper).pages
    return page


def parts(phase):
    protocol = demo.context(protocol="clean-hands").protocol
    found = next(each for each in protocol.phases if each.id == phase)
    return parts_of(numbered_steps(protocol, found))


@pytest.mark.parametrize(("phase", "counts"), [("rub", (2, 6, 1)), ("wash", (2, 6, 3))])
def test_the_six_movements_stand_between_what_comes_before_and_after(phase, counts):
    found = parts(phase)
    assert (len(found.before), len(found.movements), len(found.after)) == counts


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("phase", ["rub", "wash"])
def test_only_the_movements_are_inside_the_timed_panel(phase, paper):
    page = page_of(phase, paper=paper)
    ((panel, bounds),) = groups_of(page, GroupRole.TIMED)
    inside = {step.name for step, box in groups_of(page, GroupRole.STEP) if bounds.contains(box, 0.05)}
    touching = {step.name for step, box in groups_of(page, GroupRole.STEP) if min(bounds.overlap(box)) > 0.05}
    prefix = "wash-" if phase == "wash" else ""
    assert inside == touching == {prefix + name for name in MOVEMENTS}
    assert panel.fact("seconds") == (40 if phase == "wash" else 20)


@pytest.mark.parametrize("tag", demo.LANGUAGES)
@pytest.mark.parametrize("phase", ["rub", "wash"])
@pytest.mark.parametrize("paper", ["A4", "A4-landscape"])
def test_every_language_fits_on_one_sheet_with_steps_in_order(tag, phase, paper):
    page = page_of(phase, tag, paper)
    numbers = [step.fact("number") for step, _ in groups_of(page, GroupRole.STEP)]
    assert numbers == list(range(1, (11 if phase == "wash" else 9) + 1))
    for picture, box in groups_of(page, GroupRole.PICTURE):
        assert box.width >= 15, picture.name


def test_the_time_is_shared_by_six_equal_boxes_numbered_like_the_movements():
    page = page_of("rub")
    boxes = sorted((box.x, mark.text) for mark, box in texts_of(page) if mark.role == "bar")
    assert [text for _, text in boxes] == ["3", "4", "5", "6", "7", "8"]
    centres = sorted(box.x + box.width / 2 for mark, box in texts_of(page) if mark.role == "bar")
    steps = [after - before for before, after in pairwise(centres)]
    assert max(steps) - min(steps) < 0.5
    ends = [mark.text for mark, _ in texts_of(page) if mark.role == "time"]
    assert [end.replace("\u00a0", " ") for end in ends] == ["0", "20 s"]


def test_the_bar_runs_from_the_start_edge_in_right_to_left_sheets():
    page = page_of("rub", "ar")
    boxes = sorted((box.x for mark, box in texts_of(page) if mark.role == "bar"), reverse=True)
    first = next(box.x for mark, box in texts_of(page) if mark.role == "bar")
    assert boxes[0] == first


@pytest.mark.parametrize("paper", PAPERS)
def test_movements_have_the_largest_pictures_among_cards_of_their_form(paper):
    page = page_of("wash", "hi", paper)
    sides = {picture.name: box.width for picture, box in groups_of(page, GroupRole.PICTURE)}
    movement = {side for name, side in sides.items() if name.startswith("technique-")}
    assert len({round(side, 3) for side in movement}) == 1
    if paper.endswith("landscape"):
        assert max(sides.values()) == pytest.approx(max(movement))


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("phase", ["rub", "wash"])
def test_cards_neither_overlap_nor_leave_the_space_between_title_and_foot(phase, paper):
    layout = lay_out_hands(paper_of(paper), parts(phase), footer=18.0, qr_least=20.0)
    boxes = [cell.box for cell in layout.cells]
    for index, box in enumerate(boxes):
        assert box.y >= layout.margin + layout.title
        assert box.bottom <= layout.footer_top + 1e-6
        assert box.x >= layout.margin - 1e-6
        assert box.right <= layout.width - layout.margin + 1e-6
        assert all(min(box.overlap(other)) <= 1e-6 for other in boxes[:index])


def test_words_too_long_for_small_paper_are_refused_in_millimetres():
    context = demo.context(protocol="clean-hands")
    with pytest.raises(RefusedError, match=r"poster rub in en on A6 .* mm too large"):
        compose_hand_poster(context, context.protocol.phases[0], paper_of("A6"))


def test_hand_posters_carry_rule_code_and_draft_marks():
    page = page_of("wash", "fr")
    rule = demo.context("fr", "clean-hands").wording.content("clean-hands/phase/wash/rule")
    assert rule in {mark.text for mark, _ in texts_of(page)}
    ((code, _),) = groups_of(page, GroupRole.QR)
    assert code.fact("module") >= 0.5
    assert len(groups_of(page, GroupRole.DRAFT_TAG)) == 1


def test_a_phase_without_a_time_has_no_bar():
    context = demo.context(protocol="clean-hands")
    timeless = replace(context.protocol.phases[0], seconds=None)
    sheet = compose_hand_poster(context, timeless, paper_of("A4"))
    assert not any(mark.role == "bar" for mark, _ in texts_of(sheet.pages[0]))
