"""What a protocol needs on the ward."""

from dataclasses import replace

from rehearsal_edits import demo_library, layered_protection, with_fixture

from signage.rehearse.equipment import derive_equipment

HANDS = demo_library().protocols["clean-hands"]


def needed(library=None, protocol=None):
    fixtures = derive_equipment(library or demo_library(), protocol or layered_protection()).fixtures
    return {(need.kind, need.zone, need.fixture) for need in fixtures}


def test_fixtures_are_those_that_the_steps_use_or_imply():
    assert needed() == {
        ("dispenser", "anteroom", "dispenser-anteroom"),
        ("dispenser", "dirty-side", "dispenser-dirty"),
        ("bin", "dirty-side", "bin-a"),
        ("bin", "dirty-side", "bin-b"),
        ("tub", "dirty-side", "tub-g"),
        ("chair", "dirty-side", "dirty-chair"),
        ("bin", "clean-side", "bin-r"),
        ("sink", "clean-side", "sink-clean"),
        ("mat", "clean-side", "mat"),
        ("clock", "anteroom", "clock-anteroom"),
        ("clock", "dirty-side", "clock-dirty"),
        ("clock", "clean-side", clock_on_the_clean_side()),
        ("mirror", "anteroom", "mirror-anteroom"),
        ("mirror", "dirty-side", "mirror-dirty"),
    }


def clock_on_the_clean_side():
    fixtures = demo_library().wards["lantern-bay"].fixtures.values()
    return next((f.id for f in fixtures if (f.kind, f.zone) == ("clock", "clean-side")), None)


def test_a_fixture_that_is_missing_is_named_by_kind_and_zone():
    library = with_fixture(demo_library(), "dispenser-anteroom", zone="corridor")
    assert ("dispenser", "anteroom", None) in needed(library)


def test_steps_stand_beside_each_fixture():
    fixtures = derive_equipment(demo_library(), layered_protection()).fixtures
    steps = {need.fixture: need.steps for need in fixtures}
    assert steps["bin-b"] == ("outer-gloves-off", "inner-gloves-off")


def test_pieces_are_entries_times_days_and_spares_rounded_up():
    kit = derive_equipment(
        demo_library(), layered_protection(), entries_per_day=3, days=7, spare_percent=10
    ).kit
    pieces = {need.item: need.pieces for need in kit}
    assert pieces["coverall"] == 24, "21 entries and 2.1 spares"
    assert pieces["goggles"] == 2, "goggles come back: one entry at a time, and a spare"
    put_on = {s.action.item for s in layered_protection().steps if s.action.verb == "don"}
    assert set(pieces) == put_on


def test_no_spares_means_no_rounding():
    kit = derive_equipment(demo_library(), layered_protection(), entries_per_day=3).kit
    assert {need.pieces for need in kit if not need.is_reusable} == {3}


def test_hygiene_is_counted_by_agent():
    assert derive_equipment(demo_library(), layered_protection()).hygiene == (("rub", 10), ("wash", 1))


def test_the_movements_of_a_technique_card_are_one_hygiene():
    equipment = derive_equipment(demo_library(), HANDS, days=2)
    assert equipment.hygiene == (("rub", 2), ("wash", 2))
    assert ("clock", "clean-side") in {(need.kind, need.zone) for need in equipment.fixtures}


def test_bins_are_emptied_by_their_capacity():
    """Bin A holds 20 and takes four things an entry: ten entries fill it twice."""
    loads = dict(derive_equipment(demo_library(), layered_protection(), entries_per_day=10).bin_loads)
    assert loads == {"bin-a": 2, "bin-b": 1, "bin-r": 1, "tub-g": 2}


def test_without_a_ward_nothing_is_derived_from_the_walk():
    equipment = derive_equipment(demo_library(), replace(layered_protection(), ward="nowhere"))
    assert equipment.fixtures == ()
