"""The state after each step, as a body map shows it."""

import json

from rehearsal_edits import demo_library, layered_protection, new_step, with_action, with_step_after

from signage.rehearse.rehearsal import rehearse
from signage.rehearse.state.level import Level

TRACE = {state.step: state for state in rehearse(demo_library(), layered_protection()).trace}


def wearer(step):
    return TRACE[step].of("wearer")


def test_one_state_for_each_step():
    assert list(TRACE) == [step.id for step in layered_protection().steps]


def test_zone_follows_the_moves():
    assert wearer("observer-check").zone == "anteroom"
    assert wearer("enter-room").zone == "room"
    assert wearer("to-corridor").zone == "corridor"
    assert TRACE["to-corridor"].of("observer").zone == "anteroom"


def test_hands_run_from_the_skin_outwards():
    assert wearer("to-dirty-side").hands == (
        ("skin", Level.CLEAN),
        ("inner-gloves", Level.CLEAN),
        ("outer-gloves", Level.CONTAMINATED),
    )
    assert wearer("rub-outer-first").hands[-1] == ("outer-gloves", Level.REDUCED)
    assert wearer("rub-bare-hands").hands == (("skin", Level.CLEAN),)


def levels(step):
    return {worn.garment: worn for worn in wearer(step).worn}


def test_the_room_contaminates_what_is_exposed_and_nothing_beneath():
    after = levels("enter-room")
    outside = {name for name, worn in after.items() if worn.outside is Level.CONTAMINATED}
    assert outside == {"coverall", "boot-covers", "respirator", "goggles", "hood", "apron", "outer-gloves"}
    assert after["scrubs"].outside is after["shoes"].outside is after["inner-gloves"].outside is Level.CLEAN


def test_straps_under_the_hood_stay_clean():
    after = levels("enter-room")
    assert after["respirator"].straps is after["goggles"].straps is Level.CLEAN
    assert after["apron"].straps is Level.REDUCED


def test_bare_parts_of_the_body():
    assert wearer("fit-tested").bare == (
        "hair", "eyes", "mouth-nose", "ears", "neck", "arms", "wrists", "hands",
    )  # fmt: skip
    assert wearer("enter-room").bare == ()


def test_open_fasteners_soles_seat_and_hygiene_that_is_due():
    assert levels("coverall-on")["coverall"].open_fasteners == ("zip",)
    assert levels("zip-close")["coverall"].open_fasteners == ()
    assert wearer("enter-room").soles is Level.CONTAMINATED
    assert wearer("stand-on-mat").soles is Level.REDUCED
    assert wearer("sit-dirty-chair").seat == "dirty-chair"
    assert wearer("apron-off").hygiene_due == "apron"
    assert wearer("rub-after-apron").hygiene_due is None


def test_fixtures_that_a_step_uses():
    assert TRACE["apron-off"].fixtures == ("bin-a",)
    assert TRACE["rub-after-apron"].fixtures == ("dispenser-dirty",)
    assert dict(TRACE["stand-up"].fixture_levels)["dirty-chair"] is Level.CONTAMINATED


def test_what_is_in_the_hand():
    protocol = with_action(layered_protection(), "apron-off", bin=None)
    states = {state.step: state for state in rehearse(demo_library(), protocol).trace}
    assert states["apron-off"].of("wearer").held == ("apron",)


def test_an_exposure_is_not_undone_by_washing():
    protocol = with_action(layered_protection(), "respirator-off", technique="front-grab")
    states = {state.step: state for state in rehearse(demo_library(), protocol).trace}
    washed = states["wash-hands"].of("wearer")
    assert washed.hands == (("skin", Level.CLEAN),)
    assert {(e.step, e.site, e.source) for e in washed.exposures} == {
        ("respirator-off", "hands", "respirator"),
        ("respirator-off", "mouth-nose", "respirator"),
    }


def test_a_conditional_step_has_its_state_at_its_place():
    step = new_step("torn", "say", by="wearer")
    protocol = with_step_after(layered_protection(), "apron-on", step)
    protocol = with_when(protocol, "torn", "if-torn")
    names = [state.step for state in rehearse(demo_library(), protocol).trace]
    assert names[names.index("apron-on") + 1] == "torn"
    assert len(names) == 43


def with_when(protocol, name, when):
    from dataclasses import replace

    phases = tuple(
        replace(phase, steps=tuple(replace(s, when=when) if s.id == name else s for s in phase.steps))
        for phase in protocol.phases
    )
    return replace(protocol, phases=phases)


class TestConditions:
    """Steps with a condition are walked in a second run, and only what they add is told."""

    def test_a_glove_taken_off_when_torn(self):
        change = new_step("torn-glove", "doff", item="outer-gloves", bin="bin-b")
        protocol = with_step_after(layered_protection(), "rub-outer-first", change)
        protocol = with_when(protocol, "torn-glove", "if-torn")
        found = {(f.code, f.step) for f in rehearse(demo_library(), protocol).findings}
        assert ("HH-1", "apron-off") in found
        assert ("LY-6", "outer-gloves-off") in found

    def test_nothing_is_added_by_a_step_that_says_something(self):
        protocol = with_step_after(layered_protection(), "apron-off", new_step("torn", "say"))
        protocol = with_when(protocol, "torn", "if-torn")
        assert rehearse(demo_library(), protocol).findings == ()

    def test_a_conditional_step_does_not_stand_in_for_one_that_is_always_done(self):
        protocol = with_when(layered_protection(), "rub-after-outer", "if-soiled")
        found = {(f.code, f.step) for f in rehearse(demo_library(), protocol).findings}
        assert found == {("HH-1", "hood-off")}


def test_json_is_plain():
    data = TRACE["apron-off"].as_json()
    assert json.loads(json.dumps(data)) == data
    assert data["step"] == "apron-off"
    assert data["zone"] == "dirty-side"
    assert {"layer": "outer-gloves", "level": "contaminated"} in data["hands"]
    assert [other["person"] for other in data["others"]] == ["observer"]
