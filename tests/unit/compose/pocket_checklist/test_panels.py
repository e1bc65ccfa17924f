from collections import Counter
from dataclasses import replace

import demo
import pytest
from long_samples import context_of, with_steps, with_zone_names
from sheet_edits import found

from signage.check.sheet_rules import (
    fold,
    line_through_text,
    margins,
    shape_over_text,
    step_order,
    text_overlap,
    type_floor,
)
from signage.compose.pocket_checklist.panels import compose_pocket
from signage.drawing.marks import Group, PathMark, groups_of, texts_of, walk
from signage.drawing.roles import GroupRole
from signage.ground.geometry import path_box
from signage.impose.fold import fold_eight

RULES = (
    fold.RULE,
    line_through_text.RULE,
    margins.RULE,
    shape_over_text.RULE,
    step_order.RULE,
    text_overlap.RULE,
    type_floor.RULE,
)


def folded(context):
    return fold_eight(compose_pocket(context), 297, 210, "A4")


def faults(sheet, context):
    return [problem.message for rule in RULES for problem in found(rule, sheet, context)]


def panels_of(sheet):
    """Panel numbers over all folded sheets, each with its marks."""
    return [
        (8 * number + int(mark.name), mark)
        for number, page in enumerate(sheet.pages)
        for mark in page.marks
        if isinstance(mark, Group) and mark.role == "panel"
    ]


def members(panel, role):
    return [mark for mark, _ in walk(panel.marks) if isinstance(mark, Group) and mark.role == role]


def words_of(panel):
    return [mark for mark, _ in walk(panel.marks) if hasattr(mark, "text")]


def plain(text):
    return " ".join(text.replace("\xa0", " ").replace("\u202f", " ").split())


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_all_steps_stand_in_order_and_nothing_lies_on_another(tag):
    for protocol in demo.project().library.protocols.values():
        sheet = demo.sheet("pocket-checklist", tag, paper="A4", protocol=protocol.id)
        at = [(panel, step.name) for panel, mark in panels_of(sheet) for step in members(mark, "step")]
        assert [name for _, name in at] == [step.id for step in protocol.steps]
        assert [panel for panel, _ in at] == sorted(panel for panel, _ in at)
        assert {panel for panel, _ in at} <= {2, 3, 4, 5, 6}
        assert not sheet.overflows
        assert not faults(sheet, demo.context(tag, protocol.id))


def test_each_step_has_a_box_to_tick_and_each_list_opens_with_its_zone():
    sheet = demo.sheet("pocket-checklist", "hi", paper="A4")
    assert len(groups_of(sheet.pages[0], GroupRole.TICK_BOX)) == 42
    for _, panel in panels_of(sheet):
        if members(panel, "step"):
            names = [mark for mark in words_of(panel) if mark.role in {"zone", "row"}]
            assert names[0].role == "zone"


def test_rows_of_one_line_have_one_pitch_and_panels_of_a_phase_are_even():
    sheet = demo.sheet("pocket-checklist", "en", paper="A4")
    rows = groups_of(sheet.pages[0], GroupRole.STEP)
    assert {round(box.height, 3) for _, box in rows} == {8.3}
    counts = [len(members(panel, "step")) for _, panel in panels_of(sheet)][1:6]
    assert counts == [9, 8, 9, 9, 7]
    # ten steps keep together on one panel: one alone on the next was overlooked
    spill = demo.sheet("pocket-checklist", "en", paper="A4", protocol="spill")
    assert [len(members(panel, "step")) for _, panel in panels_of(spill)][1:3] == [10, 7]


def test_every_stop_rule_of_every_phase_is_on_it_and_what_goes_where():
    for tag in demo.LANGUAGES:
        for protocol in demo.project().library.protocols.values():
            sheet = demo.sheet("pocket-checklist", tag, paper="A4", protocol=protocol.id)
            said = {plain(mark.text) for _, panel in panels_of(sheet)[6:7] for mark in words_of(panel)}
            wording = demo.project().wording(tag)
            rules = {
                plain(wording.content(f"{protocol.id}/phase/{phase.id}/rule"))
                for phase in protocol.phases
                if phase.rule_kind == "stop"
            }
            assert rules <= said
            bins = {a.bin for s in protocol.steps for a in s.actions if a.bin and a.item}
            rows = [row.name for _, panel in panels_of(sheet) for row in members(panel, "container-row")]
            assert set(rows) == bins


def test_rules_that_one_panel_cannot_hold_go_on_the_next():
    context = with_steps([8, 8, 8], protocol="gone-wrong")
    long = " ".join(["Somebody unwell, torn or splashed? Stay, call the observer, keep the kit on."] * 4)
    phases = tuple(replace(phase, rule=long) for phase in context.protocol.phases)
    changed = replace(context.protocol, phases=phases)
    context = context_of(
        replace(context.library, protocols={**context.library.protocols, "gone-wrong": changed}), "gone-wrong"
    )
    sheet = folded(context)
    said = Counter(mark.role for _, panel in panels_of(sheet) for mark in words_of(panel))
    assert said["key-rule"] == 3
    assert not faults(sheet, context)


def test_sixty_steps_stand_on_one_sheet():
    for counts in ([30, 30], [17, 43], [60, 0]):
        context = with_steps([n for n in counts if n] if 0 not in counts else [59, 1])
        sheet = folded(context)
        assert len(sheet.pages) == 1
        assert len(groups_of(sheet.pages[0], GroupRole.STEP)) == 60
        assert not sheet.overflows
        assert not faults(sheet, context)


@pytest.mark.parametrize("tag", ["en", "en-XA", "ar-XB"])
def test_what_one_sheet_cannot_hold_goes_on_a_second_that_says_so(tag):
    context = with_steps([41, 79], tag)
    sheet = folded(context)
    count = len(sheet.pages)
    assert count > 1
    assert not sheet.overflows
    assert not faults(sheet, context)
    wording = context.wording
    for number, page in enumerate(sheet.pages, start=1):
        says = wording.fixed("sheet-of", page=wording.number(number), pages=wording.number(count))
        panels = [mark for mark in page.marks if isinstance(mark, Group) and mark.role == "panel"]
        for panel in panels[:7]:
            assert any(plain(says) in plain(mark.text) for mark in words_of(panel)), panel.name
        assert any(mark.role == "key-rule" for panel in panels for mark in words_of(panel))
    # the second sheet says in which zone and phase it goes on
    second = [mark for mark in sheet.pages[1].marks if isinstance(mark, Group) and mark.role == "panel"][1]
    assert words_of(second)[0].role == "panel-title" or any(m.role == "zone" for m in words_of(second))


def test_names_of_zones_and_a_title_that_are_long_stand_beside_and_not_under():
    for tag in ("en", "en-XA", "ar-XB"):
        context = with_zone_names("Neonatal cohort cot room", tag, title="Cot room, gown mask and gloves")
        sheet = folded(context)
        assert not sheet.overflows
        assert not faults(sheet, context)


def test_a_conditional_step_says_its_condition():
    context = with_steps([4, 4], when="if-soiled")
    sheet = folded(context)
    said = [mark.text for mark, _ in texts_of(sheet.pages[0]) if mark.role == "condition"]
    assert said == [context.wording.fixed("if-soiled")] * 8
    assert not faults(sheet, context)
    accented = with_steps([4, 4], "en-XA", when="if-soiled")
    assert not found(line_through_text.RULE, folded(accented), accented)


def test_no_tint_half_covers_a_line():
    page = demo.sheet("pocket-checklist", "fr", paper="A4", tone="mono").pages[0]
    lines, covered = [], []
    for mark, transform in walk(page.marks):
        if not isinstance(mark, PathMark):
            continue
        box = transform.box(path_box(mark.path))
        if mark.stroke and not mark.fill and box.height < 0.001 and box.width > 20:
            lines.append((box, mark.width))
        elif mark.fill and not mark.stroke and box.width > 20:
            covered += [
                line
                for line, width in lines
                if box.overlap(line)[0] > 1 and box.y - width / 2 < line.y < box.bottom + width / 2
            ]
    assert len(lines) > 40
    assert covered == []


def test_it_says_what_it_is_not_and_where_cautions_stand():
    page = demo.sheet("pocket-checklist", "en", paper="A4").pages[0]
    said = " ".join(plain(mark.text) for mark, _ in texts_of(page)).lower()
    assert "does not replace training" in said
    assert "cautions: see poster and step cards." in said


def test_the_address_is_readable_without_a_phone():
    page = demo.sheet("pocket-checklist", "ar", paper="A4").pages[0]
    assert any("lantern-bay.internal:8080" in mark.text for mark, _ in texts_of(page))


def test_what_only_a_local_document_tells_stands_on_the_back_under_a_head():
    for tag in demo.LANGUAGES:
        context = demo.context(tag)
        said = [mark for _, panel in panels_of(folded(context)) for mark in words_of(panel)]
        words = " ".join(mark.text for mark in said).replace("\u00a0", " ")
        shown = [context.wording.fixed("local-documents")]
        shown += [
            context.wording.content(f"layered-protection/hazard/{name}")
            for name in ("bin-full", "observer-missing", "fire-alarm")
        ]
        assert all(text.replace("\u00a0", " ") in words for text in shown), tag
        assert faults(folded(context), context) == [], tag
