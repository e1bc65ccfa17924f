"""The demo protocol with one change each, and exactly what a trained observer would object to."""

from dataclasses import replace

import pytest
from rehearsal_edits import (
    demo_library,
    found,
    layered_protection,
    moved_before,
    new_step,
    with_action,
    with_fixture,
    with_garment,
    with_policy,
    with_step_after,
    with_step_before,
    with_zone,
    without_steps,
)

from signage.ground.problem import Severity
from signage.model.library import Thing
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.state.level import Level
from signage.rehearse.variations.alternatives import free_swaps, leave_one_out


class TestTheDemoAsItStands:
    def test_nothing_is_found(self):
        assert found(layered_protection()) == []

    def test_every_step_is_load_bearing(self):
        result = leave_one_out(demo_library(), layered_protection())
        assert result.load_bearing == tuple(step.id for step in layered_protection().steps)
        assert len(result.load_bearing) == 42
        assert result.unexplained == ()

    def test_eleven_neighbours_may_be_exchanged(self):
        assert free_swaps(demo_library(), layered_protection()) == (
            ("fit-tested", "drink-and-toilet"),
            ("drink-and-toilet", "jewellery-off"),
            ("jewellery-off", "rub-before-kit"),
            ("rub-before-kit", "inspect-kit"),
            ("zip-close", "boot-covers-on"),
            ("boot-covers-on", "respirator-on"),
            ("seal-check", "goggles-on"),
            ("hood-on", "apron-on"),
            ("apron-on", "outer-gloves-on"),
            ("rub-after-boots", "stand-up"),
            ("stand-up", "outer-gloves-off"),
        )

    def test_the_card_of_clean_hands_is_clean(self):
        assert found(demo_library().protocols["clean-hands"]) == []


def test_hygiene_after_outer_gloves_dropped():
    assert found(without_steps(layered_protection(), "rub-after-outer")) == [("HH-1", "hood-off")]


def test_goggles_before_hood():
    protocol = moved_before(layered_protection(), "goggles-off", "hood-off")
    assert found(protocol) == [("LY-1", "goggles-off"), ("HH-1", "hood-off")]
    assert "still under: hood" in rehearse(demo_library(), protocol).findings[0].message


def test_respirator_off_on_the_dirty_side():
    protocol = moved_before(layered_protection(), "respirator-off", "to-clean-side")
    assert found(protocol) == [
        ("RP-1", "respirator-off"),
        ("BN-2", "respirator-off"),
        ("HH-1", "to-clean-side"),
    ]


def test_bare_hands_named_while_gloves_are_worn():
    protocol = with_action(layered_protection(), "rub-after-apron", layer="skin")
    assert found(protocol) == [("HH-3", "rub-after-apron"), ("HH-1", "sit-dirty-chair")]


def test_boot_covers_off_on_a_clean_chair():
    library = with_fixture(demo_library(), "clean-chair", zone="dirty-side")
    protocol = with_action(layered_protection(), "sit-dirty-chair", chair="clean-chair")
    assert found(protocol, library) == [("FX-2", "sit-dirty-chair")]


def test_boot_covers_never_removed():
    protocol = without_steps(layered_protection(), "boot-covers-off")
    result = rehearse(demo_library(), protocol)
    assert [f.code for f in result.findings] == ["LY-7", "LY-1", "RP-2", "ZN-2"]
    (group,) = result.groups
    assert group.cause.code == "LY-7"
    assert [(f.code, f.step) for f in group.consequences] == [
        ("LY-1", "coverall-off"),
        ("RP-2", "respirator-off"),
        ("ZN-2", "to-corridor"),
    ]


def test_zip_never_closed():
    assert found(without_steps(layered_protection(), "zip-close")) == [("EN-3", "enter-room")]


def test_goggles_into_the_waste_bin():
    protocol = with_action(layered_protection(), "goggles-off", bin="bin-a")
    assert found(protocol) == [("BN-3", "goggles-off")]
    (finding,) = rehearse(demo_library(), protocol).findings
    assert finding.severity is Severity.S1, "goggles are used again; in the waste they are lost"


def test_observer_tucks_in_the_hood():
    tuck = new_step("tuck", "adjust", by="observer", on="wearer", item="hood")
    protocol = with_step_after(layered_protection(), "rub-outer-first", tuck)
    result = rehearse(demo_library(), protocol)
    assert [(f.code, f.step, f.person) for f in result.findings] == [
        ("RO-1", "tuck", "observer"),
        ("CT-1", "tuck", "observer"),
        ("HH-1", "tuck", "observer"),
    ]
    assert "the end" in result.findings[-1].message


def test_respirator_grabbed_by_the_front():
    protocol = with_action(layered_protection(), "respirator-off", technique="front-grab")
    assert sorted(found(protocol)) == [
        ("CT-1", "respirator-off"),
        ("CT-2", "respirator-off"),
        ("CT-3", "respirator-off"),
    ]
    exposed = {exposure.site for exposure in rehearse(demo_library(), protocol).exposures}
    assert exposed == {"hands", "mouth-nose"}


def test_apron_grabbed_by_the_front_over_the_zipped_coverall():
    """The coverall stays on between the apron and the clothes, which therefore stay clean."""
    protocol = with_action(layered_protection(), "apron-off", technique="front-grab")
    result = rehearse(demo_library(), protocol)
    assert [(f.code, f.step) for f in result.findings] == [("LY-10", "apron-off")]
    worn = {w.garment: w for w in result.trace[-1].of("wearer").worn}
    assert worn["scrubs"].outside is Level.CLEAN


def test_hood_pushed_straight_in_the_room():
    push = new_step("push", "adjust", item="hood")
    assert found(with_step_after(layered_protection(), "enter-room", push)) == [("CT-3", "push")]


def test_up_from_the_dirty_chair_only_after_the_coverall_is_off():
    """The scrubs meet the seat when the coverall is off, and carry it out."""
    protocol = moved_before(layered_protection(), "stand-up", "goggles-off")
    assert found(protocol) == [("FX-2", "coverall-off"), ("ZN-2", "to-corridor")]


def test_respirator_out_of_the_bin():
    again = new_step("again", "don", item="respirator")
    protocol = with_step_after(layered_protection(), "wash-hands", again)
    assert ("LY-9", "again") in found(protocol)


@pytest.mark.parametrize(("step", "technique"), [("coverall-off", "straps-back"), ("apron-off", "lift-back")])
def test_a_way_of_taking_off_that_cannot_work(step, technique):
    assert found(with_action(layered_protection(), step, technique=technique)) == [("LY-10", step)]


def test_tap_that_is_turned_by_hand():
    library = with_fixture(demo_library(), "sink-clean", opening="hand")
    assert found(layered_protection(), library) == [("CT-6", "wash-hands")]


def test_dispenser_that_is_pumped_by_hand():
    """Six rubs on the dirty side: the last is with bare hands at what gloves have pumped before."""
    library = with_fixture(demo_library(), "dispenser-dirty", opening="hand")
    rubs = [s.id for s in layered_protection().steps if s.id.startswith("rub-") and s.id != "rub-before-kit"]
    expected = [("CT-6", step) for step in rubs] + [("CT-1", "rub-bare-hands")]
    assert sorted(found(layered_protection(), library)) == sorted(expected)


def test_cleaned_gloves_at_the_notice_board():
    protocol = without_steps(layered_protection(), "inner-gloves-off", "rub-bare-hands")
    read = new_step("read", "touch", target="noticeboard")
    assert ("CT-6", "read") in found(with_step_after(protocol, "to-corridor", read))


def test_a_drink_in_the_room():
    protocol = with_step_after(layered_protection(), "enter-room", new_step("drink", "drink"))
    assert found(protocol) == [("CT-8", "drink")]


class TestTheWasteBag:
    """The porter takes it over the line, from a zone whose floor is dirty."""

    @pytest.fixture
    def protocol(self):
        return demo_library().protocols["waste-out"]

    def test_with_bare_hands(self, protocol):
        bare = without_steps(protocol, "porter-gloves-on", "porter-rub-gloves", "porter-gloves-off")
        bare = without_steps(bare, "porter-rub-after-gloves")
        assert ("CT-1", "hand-over") in found(bare)

    def test_gloves_that_took_it_come_off_uncleaned(self, protocol):
        assert found(without_steps(protocol, "porter-rub-gloves")) == [("HH-1", "porter-gloves-off")]

    def test_the_giver_ends_with_gloves_that_held_it(self, protocol):
        assert found(without_steps(protocol, "rub-after-handover")) == [("HH-6", "hand-over")]

    def test_nobody_gave_it(self, protocol):
        assert ("LY-6", "bag-away") in found(without_steps(protocol, "hand-over"))

    def test_into_a_clean_room(self, protocol):
        library = with_zone(demo_library(), "waste-room", zone_class="clean", floor="clean")
        assert ("ZN-2", "hand-over") in found(protocol, library)

    def test_wiped_before_it_is_handed_on(self, protocol):
        library = with_policy(demo_library(), "min-wipe", 0)
        library = with_policy(library, "agents-on-kit", ("wipe",))
        wipe = new_step("wipe-bag", "wipe", by="inside-person", item="waste-bag")
        wiped = with_step_after(protocol, "tie-swan-neck", wipe)
        wiped = without_steps(wiped, "porter-rub-gloves", "rub-after-handover")
        assert found(wiped, library) == [("HH-1", "wipe-bag")], "the hand that tied it goes on to wipe it"


class TestThePhone:
    @pytest.fixture
    def protocol(self):
        thing = Thing(id="phone", surface="hard")
        wearer, *others = layered_protection().people
        people = (replace(wearer, carries=("phone",)), *others)
        return replace(layered_protection(), people=people, things={"phone": thing})

    def test_taken_along_out_of_the_room(self, protocol):
        assert found(protocol) == [("ZN-7", "to-dirty-side")]

    def test_disinfected_in_the_room(self, protocol):
        clean = new_step("clean-phone", "disinfect", thing="phone")
        assert found(with_step_after(protocol, "enter-room", clean)) == []

    def test_left_outside(self, protocol):
        leave = new_step("leave-phone", "put-down", thing="phone", fixture="kit-shelf")
        assert found(with_step_before(protocol, "rub-before-kit", leave)) == []


def test_gloves_on_before_the_rub_has_dried():
    """The time stands in the step that rubs; without it, local policy's time is not kept."""
    protocol = with_action(layered_protection(), "rub-before-kit")
    assert found(protocol) == [("HH-10", "inner-gloves-on")]


def test_a_drink_at_the_wrong_end():
    protocol = moved_before(layered_protection(), "drink-and-toilet", "respirator-off")
    assert ("CT-8", "drink-and-toilet") in found(protocol)


def test_inner_gloves_off_before_the_coverall():
    protocol = moved_before(layered_protection(), "inner-gloves-off", "zip-open")
    for name in ("rub-after-zip", "rub-after-coverall", "rub-after-goggles"):
        protocol = with_action(protocol, name, layer="skin")
    assert found(protocol) == [("LY-1", "inner-gloves-off"), ("HH-1", "zip-open"), ("CT-1", "zip-open")]


def test_no_seal_check():
    assert found(without_steps(layered_protection(), "seal-check")) == [("EN-2", "enter-room")]


def test_face_touched_after_the_apron():
    touch = new_step("rub-eye", "touch", target="eyes")
    protocol = with_step_after(layered_protection(), "apron-off", touch)
    assert found(protocol) == [("HH-1", "rub-eye"), ("CT-3", "rub-eye")]


def test_mouth_touched_moves_the_respirator_as_well():
    touch = new_step("rub-nose", "touch", target="mouth-nose")
    protocol = with_step_after(layered_protection(), "apron-off", touch)
    assert sorted(code for code, _step in found(protocol)) == ["CT-3", "HH-1", "RP-3"]


class TestCoverallWithoutATechnique:
    """What is not specified is taken for the worst case: the outside brushes over all that lies beneath."""

    def test_clothes_carry_it_out_and_bare_skin_meets_it(self):
        protocol = with_action(layered_protection(), "coverall-off", technique="unspecified")
        expected = [("CT-2", "coverall-off"), ("LY-10", "coverall-off"), ("ZN-2", "to-corridor")]
        assert sorted(found(protocol)) == expected
        sites = {exposure.site for exposure in rehearse(demo_library(), protocol).exposures}
        assert sites == {"neck", "arms"}, "the demo's scrubs leave neck and arms bare"

    def test_long_clothes_carry_it_out(self):
        library = with_garment(demo_library(), "scrubs", covers=("neck", "trunk", "arms", "legs"))
        protocol = with_action(layered_protection(), "coverall-off", technique="unspecified")
        assert found(protocol, library) == [("LY-10", "coverall-off"), ("ZN-2", "to-corridor")]


def test_no_bin_for_the_apron():
    protocol = with_action(layered_protection(), "apron-off", bin=None)
    assert sorted(found(protocol)) == [("BN-1", "apron-off"), ("BN-4", "rub-after-apron")]


def test_rub_of_five_seconds():
    protocol = with_action(layered_protection(), "rub-after-hood", seconds=5)
    assert found(protocol) == [("HH-2", "rub-after-hood")]


def test_glove_limit_of_three():
    library = with_policy(demo_library(), "glove-hygiene-limit", 3)
    assert found(layered_protection(), library) == [
        ("HH-7", "rub-after-coverall"),
        ("HH-7", "rub-after-goggles"),
    ]
    fourth, fifth = rehearse(library, layered_protection()).findings
    assert ("4th" in fourth.message, "5th" in fifth.message) == (True, True)


def test_bin_that_opens_by_hand():
    library = with_fixture(demo_library(), "bin-a", opening="hand")
    assert found(layered_protection(), library) == [
        ("CT-6", "apron-off"),
        ("CT-6", "boot-covers-off"),
        ("CT-6", "hood-off"),
        ("CT-6", "coverall-off"),
    ]


def test_fresh_gloves_for_the_respirator():
    library = with_fixture(demo_library(), "bin-r", accepts=("respirator", "inner-gloves"))
    library = with_policy(library, "drying-seconds", 0)
    protocol = with_step_before(
        layered_protection(),
        "respirator-off",
        new_step("fresh-gloves-on", "don", item="inner-gloves", fresh=True),
    )
    protocol = with_step_after(
        protocol,
        "respirator-off",
        new_step("rub-fresh-gloves", "hygiene", agent="rub", layer="inner-gloves", seconds=20),
        new_step("fresh-gloves-off", "doff", item="inner-gloves", bin="bin-r"),
    )
    assert found(protocol, library) == []


class TestCoverallTogetherWithOuterGloves:
    @pytest.fixture
    def protocol(self):
        protocol = without_steps(layered_protection(), "outer-gloves-off", "rub-after-outer")
        protocol = with_action(protocol, "coverall-off", together="outer-gloves")
        for name in ("rub-after-hood", "rub-after-zip"):
            protocol = with_action(protocol, name, layer="outer-gloves")
        return protocol

    def test_nothing_is_found_where_the_bin_takes_both(self, protocol):
        both = ("apron", "boot-covers", "hood", "coverall", "outer-gloves")
        assert found(protocol, with_fixture(demo_library(), "bin-a", accepts=both)) == []

    def test_the_bin_must_take_both(self, protocol):
        assert found(protocol) == [("BN-3", "coverall-off")]


def test_an_unreadable_name_hides_what_follows_from_it():
    """A chair named as a bin: the step cannot be rehearsed, so what follows from its absence is withheld."""
    protocol = with_action(layered_protection(), "hood-off", bin="dirty-chair")
    result = rehearse(demo_library(), protocol)
    assert [(f.code, f.step) for f in result.findings] == [("ST-2", "hood-off")]
    assert "LY-7" in {finding.code for finding in result.withheld}
    assert [problem.code for problem in result.problems()] == ["ST-2"]


def test_findings_know_their_place_in_the_file():
    protocol = with_action(layered_protection(), "goggles-off", bin="bin-a")
    (problem,) = rehearse(demo_library(), protocol).problems()
    step = next(step for step in layered_protection().steps if step.id == "goggles-off")
    assert problem.place == step.action.at("bin")
    assert (problem.protocol, problem.step) == ("layered-protection", "goggles-off")
    assert problem.hint


def test_a_missing_ward_is_said_once():
    result = rehearse(demo_library(), replace(layered_protection(), ward="nowhere"))
    assert [finding.code for finding in result.findings] == ["ST-2"]
    assert result.trace == ()
