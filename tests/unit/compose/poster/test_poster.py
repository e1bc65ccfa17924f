from dataclasses import replace

import demo
import pytest
from long_samples import with_steps
from sheet_edits import edited, found

from signage.check.sheet_rules import line_through_text
from signage.compose.papers import paper_of
from signage.compose.poster.poster import compose_poster
from signage.compose.refusal import TextTooLongError
from signage.drawing.marks import Group, Structure, TextMark, groups_of, texts_of, walk
from signage.drawing.roles import GroupRole
from signage.ground.errors import RefusedError
from signage.model.mark import Mark

CASES = [
    ("take-off", "en", "A3"),
    ("take-off", "ar", "A3"),
    ("take-off", "hi", "A3-landscape"),
    ("take-off", "ar", "A3-landscape"),
    ("take-off", "fr", "A4"),
    ("take-off", "ar", "A4"),
    ("put-on", "am", "A3"),
    ("put-on", "fr", "Letter"),
    ("put-on", "ar", "A2-landscape"),
    ("put-on", "en", "A1"),
]
posters = pytest.mark.parametrize(("phase", "tag", "paper"), CASES)


def poster(phase, tag, paper, tone="colour"):
    return demo.sheet("poster", tag, phase, paper, tone=tone)


def faults_of_panels(page):
    """Steps whose box is not in exactly one panel, that of their zone."""
    panels = groups_of(page, GroupRole.ZONE)
    faults = []
    for step, box in groups_of(page, GroupRole.STEP):
        homes = [panel.name for panel, bounds in panels if bounds.contains(box, 0.05)]
        if homes != [step.fact("zone")]:
            faults.append((step.fact("number"), homes))
    return faults


def spoken_by_eye(page, is_right_to_left):
    """Numbers as the grammar reads them: panel, row, card from the start edge, top to bottom."""
    panels = groups_of(page, GroupRole.ZONE)
    big = [box for step, box in groups_of(page, GroupRole.STEP) if step.fact("kind") == "big"]

    def place(item):
        step, box = item
        panel = next(i for i, (_, bounds) in enumerate(panels) if bounds.contains(box, 0.05))
        row = box.y
        if step.fact("kind") == "small":
            row = max(other.y for other in big if abs(other.x - box.x) < 0.1 and other.y < box.y)
        across = -box.x if is_right_to_left else box.x
        return panel, round(row), round(across), box.y

    return [step.fact("number") for step, _ in sorted(groups_of(page, GroupRole.STEP), key=place)]


@posters
def test_every_step_stands_on_the_ground_of_its_zone(phase, tag, paper):
    for page in poster(phase, tag, paper).pages:
        assert faults_of_panels(page) == []


def test_a_step_on_the_ground_of_another_zone_would_be_seen():
    sheet = poster("take-off", "en", "A3")

    def misplace(mark):
        is_target = isinstance(mark, Group) and mark.role == "step" and mark.name == "respirator-off"
        if not is_target:
            return mark
        return replace(mark, box=dirty)

    dirty = next(box for step, box in groups_of(sheet.pages[1], GroupRole.STEP) if step.name == "goggles-off")
    assert faults_of_panels(edited(sheet, misplace).pages[1]) == [(22, ["dirty-side"])]


@posters
def test_steps_read_in_order_by_eye_and_by_ear(phase, tag, paper):
    sheet = poster(phase, tag, paper)
    count = len(next(p for p in demo.context(tag).protocol.phases if p.id == phase).steps)
    by_eye = [n for page in sheet.pages for n in spoken_by_eye(page, sheet.is_right_to_left)]
    by_ear = [step.fact("number") for page in sheet.pages for step, _ in groups_of(page, GroupRole.STEP)]
    assert by_eye == by_ear == list(range(1, count + 1))


def test_right_to_left_mirrors_the_places_of_all_steps():
    left, right = poster("put-on", "en", "A4"), poster("put-on", "ar", "A4")
    for page, mirrored in zip(left.pages, right.pages, strict=True):
        starts = {step.name: box.x for step, box in groups_of(page, GroupRole.STEP)}
        for step, box in groups_of(mirrored, GroupRole.STEP):
            assert page.width - box.right == pytest.approx(starts[step.name])


@posters
def test_texts_overlap_neither_each_other_nor_the_margin(phase, tag, paper):
    for page in poster(phase, tag, paper).pages:
        texts = [(mark, box) for mark, box in texts_of(page) if mark.role != "ribbon"]
        for index, (mark, box) in enumerate(texts):
            assert page.margin - 0.3 <= box.x
            assert box.right <= page.width - page.margin + 0.3
            assert page.margin - 0.3 <= box.y
            assert box.bottom <= page.height - page.margin + 0.3
            for other, bounds in texts[:index]:
                width, height = box.overlap(bounds)
                assert min(width, height) <= 0.15, (mark.text, other.text)


@posters
def test_each_role_has_one_size_on_all_sheets_of_a_poster(phase, tag, paper):
    sheet = poster(phase, tag, paper)
    for role in ("headline", "detail", "strip", "time", "note", "zone", "title", "key-rule"):
        sizes = {
            round(mark.points, 3) for page in sheet.pages for mark, _ in texts_of(page) if mark.role == role
        }
        assert len(sizes) <= 1, role


@posters
def test_pictures_of_big_steps_are_equal_and_large(phase, tag, paper):
    sheet = poster(phase, tag, paper)
    sides = {
        round(box.width, 3)
        for page in sheet.pages
        for picture, box in groups_of(page, GroupRole.PICTURE)
        if not picture.fact("is_sign")
    }
    assert len(sides) == 1
    assert min(sides) >= 25


@posters
def test_code_ruler_and_draft_mark_are_on_every_sheet(phase, tag, paper):
    sheet = poster(phase, tag, paper)
    for page in sheet.pages:
        ((code, box),) = groups_of(page, GroupRole.QR)
        assert code.fact("module") >= 0.5
        assert box.width >= 20
        assert code.alternative.endswith(code.name)
        ((_, ruler),) = groups_of(page, GroupRole.RULER)
        assert ruler.width == pytest.approx(50.0)
        assert groups_of(page, GroupRole.DRAFT_TAG)


@posters
def test_the_draft_ribbon_runs_along_four_edges_in_both_languages(phase, tag, paper):
    for page in poster(phase, tag, paper).pages:
        for edge in ("top", "bottom", "left", "right"):
            ribbons = [
                mark
                for mark, _ in walk(page.marks)
                if isinstance(mark, Group) and mark.role == "ribbon" and mark.name == edge
            ]
            languages = {text.language for ribbon in ribbons for text in ribbon.marks}
            assert languages == {tag, "en"}


def test_an_approved_sheet_has_no_draft_mark():
    context = replace(demo.context("fr"), mark=Mark.NONE)
    phase = context.protocol.phases[1]
    sheet = compose_poster(context, phase, paper_of("A3"))
    roles = {mark.role for mark, _ in walk(sheet.pages[0].marks) if isinstance(mark, Group)}
    assert not roles & {"ribbon", "draft-tag"}
    assert not any("vérifiée" in mark.text for mark, _ in texts_of(sheet.pages[0]))


def test_a_translated_draft_says_that_its_words_are_not_verified():
    words = demo.context("fr").wording.fixed("translation-unverified")
    said = " ".join(mark.text for mark, _ in texts_of(poster("take-off", "fr", "A3").pages[0]))
    assert words in said
    assert not any(
        "not verified" in mark.text for mark, _ in texts_of(poster("take-off", "en", "A3").pages[0])
    )


@pytest.mark.parametrize("tag", demo.LANGUAGES)
@pytest.mark.parametrize("phase", ["put-on", "take-off"])
def test_a_long_phase_takes_few_sheets_that_are_counted(tag, phase):
    assert len(poster(phase, tag, "A3").pages) <= 2
    sheet = poster(phase, tag, "A4")
    assert len(sheet.pages) in {2, 3}
    wording = demo.context(tag).wording
    pages = wording.number(len(sheet.pages))
    for number, page in enumerate(sheet.pages, start=1):
        said = " ".join(mark.text for mark, _ in texts_of(page))
        assert wording.fixed("page-of", page=wording.number(number), pages=pages) in said
        assert wording.fixed("sheet-of", page=wording.number(number), pages=pages) in said


def test_a_further_sheet_says_which_zone_goes_on():
    _, *further = poster("take-off", "en", "A4").pages
    zones = [mark.text for page in further for mark, _ in texts_of(page) if mark.role == "zone"]
    assert "continued" in zones[0]
    assert "continued" not in zones[-1]


def test_strips_never_leave_their_card():
    for page in poster("take-off", "fr", "A4").pages:
        steps = {step.fact("number"): (step, box) for step, box in groups_of(page, GroupRole.STEP)}
        for number, (step, box) in steps.items():
            if step.fact("kind") == "small":
                _, above = steps[number - 1]
                assert above.x == pytest.approx(box.x)
                assert above.y < box.y


def test_the_time_of_every_rub_is_on_its_strip():
    pages = poster("take-off", "en", "A3").pages
    assert sum(mark.role == "time" for page in pages for mark, _ in texts_of(page)) == 9


def test_a_rub_that_comes_again_on_a_sheet_tells_its_detail_once():
    for page in poster("take-off", "en", "A3").pages:
        told = [
            (headline, mark.text)
            for step, _ in groups_of(page, GroupRole.STEP)
            for mark in (mark for mark, _ in walk(step.marks) if isinstance(mark, TextMark))
            if mark.role == "strip-detail"
            for headline in (
                mark.text for mark, _ in walk(step.marks) if getattr(mark, "role", "") == "strip"
            )
        ]
        assert told
        assert len(set(told)) == len(told)


def test_rungs_of_the_ladder_are_recorded():
    rungs = {(step.role, step.rung) for step in poster("put-on", "fr", "A3").fit}
    assert ("headline", "smaller") in rungs or ("headline", "one line") in rungs


def test_structure_has_one_title_and_a_heading_for_each_panel():
    page = poster("put-on", "en", "A3").pages[0]
    groups = [mark for mark, _ in walk(page.marks) if isinstance(mark, Group)]
    assert sum(group.structure is Structure.HEADING_1 for group in groups) == 1
    assert sum(group.structure is Structure.HEADING_2 for group in groups) == 2
    lists = [group for group in groups if group.structure is Structure.LIST]
    items = [mark for each in lists for mark, _ in walk(each.marks) if isinstance(mark, Group)]
    assert sum(item.structure is Structure.ITEM for item in items) == 17


def test_critical_steps_keep_their_mark_and_no_other_has_it():
    sheet = poster("take-off", "en", "A3")
    critical = {
        "to-dirty-side",
        "coverall-off",
        "inner-gloves-off",
        "rub-bare-hands",
        "to-clean-side",
        "respirator-off",
        "wash-hands",
    }  # those of the author, and the two ways without which kit comes off in the room or in bad air
    marked = {
        step.name
        for page in sheet.pages
        for step, _ in groups_of(page, GroupRole.STEP)
        if step.fact("critical")
    }
    assert marked == critical
    words = sum(mark.role == "critical" for page in sheet.pages for mark, _ in texts_of(page))
    assert words == len(critical) - 3  # strip 20 and the gates 1 and 21 have a reversed number only


def long_worded(context, text):
    """The same protocol with one headline replaced, in its source language."""

    class Words:
        def __getattr__(self, name):
            return getattr(context.wording, name)

        def step_text(self, protocol, step, field):
            if step.id == "apron-off" and field == "text":
                return text
            return context.wording.step_text(protocol, step, field)

    return replace(context, wording=Words())


def test_a_headline_that_cannot_fit_is_refused_with_its_place_and_millimetres():
    context = long_worded(demo.context(), "Un" + "break" * 24 + "able")
    with pytest.raises(TextTooLongError, match=r"headline .* is [\d.]+ mm too large") as refusal:
        compose_poster(context, context.protocol.phases[1], paper_of("A3"))
    message = str(refusal.value)
    assert "poster take-off in en on A3" in message
    assert refusal.value.overflows[0].message == "layered-protection/apron-off/text"
    assert (
        f"{context.wording.place_of('layered-protection/apron-off/text')}: The headline of a step" in message
    )
    assert isinstance(refusal.value, RefusedError)
    assert refusal.value.overflows[0].excess_mm > 0


def test_a_somewhat_longer_headline_costs_size_before_sheets():
    usual = poster("take-off", "en", "A3")
    context = long_worded(demo.context(), "Take the whole apron off and then fold it inward")
    longer = compose_poster(context, context.protocol.phases[1], paper_of("A3"))
    assert len(longer.pages) == len(usual.pages)

    def size(sheet):
        return next(mark.points for mark, _ in texts_of(sheet.pages[0]) if mark.role == "headline")

    assert size(longer) < size(usual)


def test_the_frame_of_a_condition_keeps_clear_of_words_with_accents():
    context = with_steps([7, 7], "en-XA", when="if-soiled", caution=None)
    for phase in context.protocol.phases:
        sheet = compose_poster(context, phase, paper_of("A3"))
        assert "condition" in {mark.role for page in sheet.pages for mark, _ in texts_of(page)}
        assert not found(line_through_text.RULE, sheet, context)
