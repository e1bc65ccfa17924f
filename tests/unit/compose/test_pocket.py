import demo
import pytest

from signage.drawing.marks import Group, groups_of, texts_of, walk


def panel_of_each_step(sheet):
    found = {}
    for panel in sheet.pages[0].marks:
        if isinstance(panel, Group) and panel.role == "panel":
            for mark, _ in walk(panel.marks):
                if isinstance(mark, Group) and mark.role == "step":
                    found[mark.name] = int(panel.name)
    return found


@pytest.mark.parametrize("tag", demo.LANGUAGES)
def test_all_steps_stand_on_panels_two_to_six_in_order(tag):
    found = panel_of_each_step(demo.sheet("pocket-checklist", tag, paper="A4"))
    assert list(found) == [step.id for step in demo.context(tag).protocol.steps]
    assert list(found.values()) == sorted(found.values())
    assert set(found.values()) <= {2, 3, 4, 5, 6}


@pytest.mark.parametrize("tag", demo.LANGUAGES)
@pytest.mark.parametrize("protocol", ["layered-protection", "clean-hands"])
def test_nothing_overflows(tag, protocol):
    assert not demo.sheet("pocket-checklist", tag, paper="A4", protocol=protocol).overflows


def test_each_step_has_a_box_to_tick():
    page = demo.sheet("pocket-checklist", "hi", paper="A4").pages[0]
    assert len(groups_of(page, "tick-box")) == 42


def test_rows_have_one_pitch_on_every_panel():
    page = demo.sheet("pocket-checklist", "fr", paper="A4").pages[0]
    assert {round(box.height, 3) for _, box in groups_of(page, "step")} == {8.3}


def test_each_phase_begins_a_panel():
    found = panel_of_each_step(demo.sheet("pocket-checklist", "en", paper="A4"))
    phases = demo.context().protocol.phases
    assert found[phases[0].steps[-1].id] < found[phases[1].steps[0].id]


def test_the_stop_rule_and_the_containers_are_on_panel_seven():
    sheet = demo.sheet("pocket-checklist", "en", paper="A4")
    seven = next(
        m for m in sheet.pages[0].marks if isinstance(m, Group) and m.role == "panel" and m.name == "7"
    )
    rows = [m.name for m, _ in walk(seven.marks) if isinstance(m, Group) and m.role == "container-row"]
    assert set(rows) == {a.bin for s in demo.context().protocol.steps for a in s.actions if a.bin}


def test_it_says_what_it_is_not():
    page = demo.sheet("pocket-checklist", "en", paper="A4").pages[0]
    assert any(
        "does not replace training" in mark.text.replace("\xa0", " ").lower() for mark, _ in texts_of(page)
    )


def test_the_address_is_readable_without_a_phone():
    page = demo.sheet("pocket-checklist", "ar", paper="A4").pages[0]
    assert any("lantern-bay.internal:8080" in mark.text for mark, _ in texts_of(page))
