import demo
import pytest

from signage.compose.canvas import Canvas
from signage.compose.lettering import Align, Lettering, TextPlace
from signage.compose.theme import style_of
from signage.drawing.marks import Group, Structure, TextMark, texts_of, walk
from signage.drawing.roles import TypeRole


def canvas_of(tag="en"):
    return Canvas(100, 80, demo.context(tag), style_of("doff"), 1.0, 5.0)


def only_text(canvas):
    ((mark, box),) = texts_of(canvas.page())
    return mark, box


def test_positions_run_from_the_start_edge():
    assert canvas_of("en").box(10, 5, 30, 8).x == 10
    assert canvas_of("ar").box(10, 5, 30, 8).x == 100 - 10 - 30


@pytest.mark.parametrize(("align", "edge"), [(Align.START, "x"), (Align.END, "right")])
def test_text_stands_at_its_edge_and_mirrors_with_the_sheet(align, edge):
    left, right = canvas_of("en"), canvas_of("ar")
    left.text("Stop", Lettering(TypeRole.HEADLINE, left.face(700), 12), TextPlace(10, 10, 60, align=align))
    right.text("قف", Lettering(TypeRole.HEADLINE, right.face(700), 12), TextPlace(10, 10, 60, align=align))
    _, box = only_text(left)
    _, mirrored = only_text(right)
    if edge == "x":
        assert box.x == pytest.approx(10, abs=0.05)
        assert mirrored.right == pytest.approx(90, abs=0.05)
    else:
        assert box.right == pytest.approx(70, abs=0.05)
        assert mirrored.x == pytest.approx(30, abs=0.05)


def test_a_title_is_centred_on_its_ink_in_every_script():
    for tag, word in (("en", "Take off"), ("ar", "الخلع"), ("hi", "उतारना"), ("am", "ማውለቅ")):
        canvas = canvas_of(tag)
        canvas.ink_line(
            word, Lettering(TypeRole.TITLE, canvas.face(700), 40, floor=10), TextPlace(5, 40, 90, height=12)
        )
        mark, box = only_text(canvas)
        assert box.y + box.height / 2 == pytest.approx(40, abs=0.02)
        assert box.height <= 12.01
        assert isinstance(mark, TextMark)


def test_a_smaller_size_is_recorded_and_an_overflow_too():
    canvas = canvas_of()
    canvas.text(
        "Take off outer gloves",
        Lettering(TypeRole.HEADLINE, canvas.face(700), 20, floor=8),
        TextPlace(5, 5, 40, lines=1),
    )
    assert canvas.fit_steps[0].role == "headline"
    assert canvas.fit_steps[0].after < 20
    assert not canvas.overflows
    canvas.text(
        "Take off outer gloves",
        Lettering(TypeRole.HEADLINE, canvas.face(700), 20, floor=18),
        TextPlace(5, 30, 10, lines=1),
    )
    assert canvas.overflows[0].excess_mm > 0


def test_the_size_of_the_role_is_kept_beside_the_size_that_was_found():
    canvas = canvas_of()
    canvas.text("Stop", Lettering(TypeRole.HEADLINE, canvas.face(700), 18, wanted=23), TextPlace(5, 5, 40))
    mark, _ = only_text(canvas)
    assert (mark.points, mark.wanted_points) == (18, 23)


def test_signs_and_decoration_say_what_they_are():
    canvas = canvas_of()
    canvas.picture("stand-up", 5, 5, 10, "Stand up", is_sign=True)
    canvas.picture("stand-up", 25, 5, 20, None)
    sign, decoration = (
        mark for mark, _ in walk(canvas.marks) if isinstance(mark, Group) and mark.role == "picture"
    )
    assert sign.fact("is_sign") is True
    assert sign.structure is Structure.FIGURE
    assert decoration.structure is Structure.ARTEFACT


def test_turned_lines_of_two_scripts_share_a_baseline():
    canvas = canvas_of("ar")
    english = demo.context("en").wording
    canvas.turned_line("مسودة", Lettering(TypeRole.RIBBON, canvas.face(600), 10), (30, 40), 0.0)
    canvas.turned_line(
        "Draft", Lettering(TypeRole.RIBBON, canvas.face(600, wording=english), 10), (70, 40), 0.0
    )
    baselines = {mark.lines[0].baseline for mark, _ in texts_of(canvas.page())}
    assert len(baselines) == 1
