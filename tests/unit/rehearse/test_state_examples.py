"""States that are wrong, made of the demo protocol by one change each, and the step that is told."""

from dataclasses import replace

import pytest
from rehearsal_edits import (
    demo_library,
    found,
    layered_protection,
    moved_before,
    new_step,
    step_of,
    with_action,
    with_fixture,
    with_step_after,
    with_step_before,
    with_zone,
    without_steps,
)

from signage.model.library import Actor, Door
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.state.level import Level

ROOM_BIN = {"accepts": ("hood", "goggles", "outer-gloves"), "kind": "tub"}
KIT = ("scrubs", "shoes", "inner-gloves", "coverall", "boot-covers", "respirator", "goggles", "hood", "apron",
       "outer-gloves")  # fmt: skip


def room_with_dispenser():
    library = with_fixture(demo_library(), "room-waste", **ROOM_BIN)
    return with_fixture(library, "sink-room", kind="dispenser", agent="rub")


def rub(name, layer="outer-gloves", **fields):
    return new_step(name, "hygiene", agent="rub", layer=layer, seconds=20, **fields)


def in_the_room(*steps):
    """The demo protocol with further steps in the room, and no step that takes off again what is gone."""
    return with_step_after(layered_protection(), "enter-room", *steps)


def codes_at(protocol, step, library=None):
    return [code for code, at in found(protocol, library) if at == step]


class TestProtectionLost:
    def test_hood_off_inside_the_room(self):
        off = new_step("hood-gone", "doff", item="hood", bin="room-waste")
        protocol = without_steps(in_the_room(off, rub("after")), "hood-off", "rub-after-hood")
        result = rehearse(room_with_dispenser(), protocol)
        assert ("EN-9", "hood-gone") in [(f.code, f.step) for f in result.findings]
        (finding,) = (f for f in result.findings if f.code == "EN-9")
        assert "taken off at step hood-gone, in this zone since step enter-room" in finding.message
        assert {e.site for e in result.exposures if e.step == "hood-gone"} >= {"hair", "ears"}

    def test_zip_opened_in_the_room_and_left(self):
        protocol = in_the_room(new_step("opened", "unfasten", item="coverall", part="zip"), rub("after"))
        assert codes_at(protocol, "opened", room_with_dispenser()) == ["LY-8", "EN-9"]

    def test_outer_gloves_changed_in_the_room(self):
        off = new_step("gone", "doff", item="outer-gloves", bin="room-waste")
        on = new_step("new", "don", item="outer-gloves", fresh=True)
        protocol = in_the_room(rub("first"), off, rub("inner", "inner-gloves"), on)
        assert codes_at(protocol, "gone", room_with_dispenser()) == ["RO-4", "EN-9"]
        assert "EN-9" not in codes_at(protocol, "new", room_with_dispenser())

    @pytest.mark.parametrize("zone", ["room", "dirty-side"])
    def test_an_assistant_in_scrubs_in_hazardous_air(self, zone):
        assistant = Actor(
            id="assistant", role="assistant", starts_in=zone, wears=("scrubs",), comes_from="corridor"
        )
        protocol = replace(layered_protection(), people=(*layered_protection().people, assistant))
        findings = rehearse(demo_library(), protocol).findings
        assert {(f.code, f.step, f.person) for f in findings} == {("EN-9", None, "assistant")}
        assert "respirator" in {f.item for f in findings}
        assert all("in this zone from the start" in f.message for f in findings)

    def test_a_transition_zone_may_ask_for_kit_as_well(self):
        library = with_zone(demo_library(), "clean-side", requires=("inner-gloves",))
        assert found(layered_protection(), library) == [("EN-9", "to-clean-side")]

    def test_what_the_dirty_side_does_not_name_may_come_off_there(self):
        assert found(layered_protection()) == []


class TestOrigin:
    def take_off_card(self, **changes):
        doff = layered_protection().phases[1]
        card = replace(layered_protection(), phases=(replace(doff, steps=doff.steps[1:]),))
        wearer = replace(card.people[0], starts_in="dirty-side", wears=KIT, **changes)
        return replace(card, people=(wearer, *card.people[1:]))

    def test_a_take_off_card_without_origin(self):
        assert found(self.take_off_card()) == [("OR-1", None)]

    def test_with_its_origin_the_same_order_is_safe_and_its_kit_is_contaminated(self):
        card = self.take_off_card(comes_from="room")
        result = rehearse(demo_library(), card)
        assert result.findings == ()
        worn = {each.garment: each for each in result.trace[0].of("wearer").worn}
        assert worn["apron"].outside is worn["coverall"].outside is Level.CONTAMINATED
        assert worn["scrubs"].outside is worn["inner-gloves"].outside is Level.CLEAN
        assert result.trace[0].of("wearer").soles is Level.CONTAMINATED

    def test_with_its_origin_a_bad_order_is_found(self):
        card = without_steps(self.take_off_card(comes_from="room"), "rub-outer-first")
        assert found(card) == [("HH-9", "apron-off")]

    def test_other_transition_zones_bring_what_is_treated(self):
        card = self.take_off_card(comes_from="clean-side")
        start = rehearse(demo_library(), card).trace[0].of("wearer")
        assert dict(start.hands)["outer-gloves"] is Level.REDUCED


class TestReadiness:
    def test_zip_opened_under_the_apron(self):
        protocol = moved_before(layered_protection(), "zip-open", "rub-outer-first")
        assert "LY-8" in codes_at(protocol, "zip-open")

    @pytest.mark.parametrize("later", ["apron-on", "outer-gloves-on", "observer-check"])
    def test_zip_closed_under_hood_or_apron(self, later):
        assert "LY-8" in codes_at(moved_before(layered_protection(), "zip-close", later), "zip-close")

    @pytest.mark.parametrize("later", ["boot-covers-on", "respirator-on", "goggles-on"])
    def test_boot_covers_and_face_kit_hide_no_zip(self, later):
        assert found(moved_before(layered_protection(), "zip-close", later)) == []

    def test_zip_closed_after_the_observers_check(self):
        protocol = moved_before(layered_protection(), "zip-close", "enter-room")
        assert codes_at(protocol, "zip-close") == ["LY-8", "EN-11"]

    def test_jewellery_off_after_the_outer_gloves(self):
        protocol = moved_before(layered_protection(), "jewellery-off", "observer-check")
        assert found(protocol) == [("EN-10", "jewellery-off")]

    @pytest.mark.parametrize("need", ["fit-tested", "drink-and-toilet", "jewellery-off"])
    def test_every_need_from_the_first_glove_on(self, need):
        names = [step.id for step in layered_protection().phases[0].steps]
        for later in names[names.index("coverall-on") :]:
            assert ("EN-10", need) in found(moved_before(layered_protection(), need, later)), later
        assert found(moved_before(layered_protection(), need, "inner-gloves-on")) == []


class TestSight:
    def watching_from(self, zone):
        wearer, observer = layered_protection().people
        stays = replace(observer, starts_in=zone, comes_from="corridor")
        return replace(layered_protection(), people=(wearer, stays))

    def test_an_observer_in_the_waste_room(self):
        assert found(self.watching_from("waste-room")) == [("RO-4", "apron-off"), ("RO-4", "respirator-off")]

    def test_a_window_in_the_hatch_shows_the_dirty_side_only(self):
        library = demo_library()
        ward = library.wards["lantern-bay"]
        glass = tuple(replace(d, window=True) if d.end == "waste-room" else d for d in ward.doors)
        library = replace(library, wards={**library.wards, ward.id: replace(ward, doors=glass)})
        assert found(self.watching_from("waste-room"), library) == [("RO-4", "respirator-off")]


class TestTwoWearersAndOneRemovalArea:
    """Both put on, go in and come out; the second takes the area over from the first."""

    def protocol(self, *between):
        first = layered_protection()
        second = replace(first.people[0], id="second")

        def by_second(step):
            actions = tuple(
                replace(a, on="second") if a.by == "observer" else replace(a, by="second")
                for a in step.actions
            )
            return replace(step, id=f"second-{step.id}", actions=actions)

        don, doff = first.phases
        both = replace(don, steps=(*don.steps, *(by_second(step) for step in don.steps)))
        off = replace(doff, steps=(*doff.steps, *between, *(by_second(step) for step in doff.steps)))
        return replace(first, people=(*first.people, second), phases=(both, off))

    def turned_round(self):
        chair = {"fixture": "dirty-chair", "by": "helper"}
        return self.with_helper(
            self.protocol(new_step("chair", "disinfect", seconds=60, **chair), rub("helper-rub", by="helper"))
        )

    def with_helper(self, protocol):
        helper = Actor(id="helper", role="assistant", starts_in="dirty-side", wears=KIT, comes_from="room")
        return replace(protocol, people=(*protocol.people, helper))

    def test_nothing_is_found_where_the_chair_is_disinfected_between(self):
        assert found(self.turned_round()) == []

    def test_the_shared_chair(self):
        assert found(self.protocol()) == [("FX-3", "second-sit-dirty-chair")]

    def test_each_wearer_has_needs_kit_and_a_check_of_their_own(self):
        for name, expected in {
            "second-drink-and-toilet": {("EN-5", "second-enter-room")},
            "second-inspect-kit": {("EN-1", f"second-{item}-on") for item in KIT[2:]},
            "second-observer-check": {("EN-6", "second-enter-room")},
            "second-hood-on": {("EN-4", "second-enter-room"), ("LY-6", "second-hood-off")},
        }.items():
            assert set(found(without_steps(self.turned_round(), name))) == expected, name

    def test_the_protection_of_each_is_judged_where_that_wearer_is(self):
        protocol = self.turned_round()
        early = replace(step_of(protocol, "second-hood-off"), id="second-early")
        protocol = with_step_before(protocol, "to-dirty-side", early)
        findings = rehearse(demo_library(), protocol).findings
        assert [(f.step, f.person) for f in findings if f.code == "EN-9"] == [("second-early", "second")]

    def test_what_the_first_leaves_on_a_hand_operated_bin_meets_the_second(self):
        library = with_fixture(demo_library(), "bin-a", opening="hand")
        steps = {step for code, step in found(self.turned_round(), library) if code == "CT-6"}
        assert {"apron-off", "second-apron-off"} <= steps

    def test_a_bin_fills_with_the_kit_of_both(self):
        library = with_fixture(demo_library(), "bin-a", capacity=4)
        steps = [step for code, step in found(self.turned_round(), library) if code == "BN-5"]
        assert steps[0] == "second-apron-off"


def test_a_door_between_rooms_is_no_way_round_what_the_next_room_asks_for():
    ward = demo_library().wards["lantern-bay"]
    zones = {**ward.zones, "annexe": replace(ward.zones["room"], id="annexe", requires=("gloves",))}
    doors = (*ward.doors, Door(start="room", end="annexe"), Door(start="annexe", end="dirty-side"))
    changed = replace(ward, zones=zones, doors=doors)
    library = replace(demo_library(), wards={**demo_library().wards, ward.id: changed})
    protocol = in_the_room(new_step("next-door", "move", to="annexe"))
    assert found(protocol, library) == [("EN-9", "next-door")]


def test_clothes_of_somebody_who_does_nothing_in_a_clean_zone():
    idle = Actor(id="idle", role="assistant", starts_in="corridor", wears=("scrubs", "shoes"))
    protocol = replace(layered_protection(), people=(*layered_protection().people, idle))
    assert found(with_action(protocol, "wash-hands", seconds=40)) == []
