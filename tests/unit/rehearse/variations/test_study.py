"""One value with everything, in the shape that programs read."""

import json

from rehearsal_edits import demo_library, layered_protection, new_step, with_action, with_step_after

from signage.rehearse.variations.study import study_protocol


def test_the_fields_of_the_contract():
    data = study_protocol(demo_library(), layered_protection()).as_json()
    assert list(data) == [
        "protocol",
        "findings",
        "trace",
        "load_bearing",
        "unexplained",
        "critical",
        "free_swaps",
    ]
    assert json.loads(json.dumps(data)) == data
    assert (len(data["trace"]), len(data["load_bearing"]), len(data["free_swaps"])) == (42, 42, 11)


def test_a_finding_carries_rule_place_and_cure():
    protocol = with_action(layered_protection(), "goggles-off", bin="bin-a")
    (finding,) = study_protocol(demo_library(), protocol).as_json()["findings"]
    assert (finding["code"], finding["severity"], finding["step"]) == ("BN-3", "S1", "goggles-off")
    assert finding["line"] == layered_protection().steps[33].action.at("bin").line
    assert finding["hint"]


def test_a_step_without_effect_is_a_finding_of_its_own():
    protocol = with_step_after(layered_protection(), "jewellery-off", new_step("hello", "say"))
    (finding,) = study_protocol(demo_library(), protocol).findings
    assert (finding.code, finding.step) == ("ST-4", "hello")
    assert finding.hint.startswith("Write 'rationale:'")


def test_a_need_that_no_zone_asks_for_is_to_be_named_in_the_ward():
    protocol = with_step_after(
        layered_protection(), "jewellery-off", new_step("hair", "need", need="hair-tied")
    )
    (finding,) = study_protocol(demo_library(), protocol).findings
    assert finding.code == "ST-4"
    assert "No zone of the ward asks for 'hair-tied': write it under 'needs' of the zone" in finding.hint


def test_faulty_references_are_all_that_is_looked_at():
    protocol = with_action(layered_protection(), "hood-off", bin="dirty-chair")
    study = study_protocol(demo_library(), protocol)
    assert [finding.code for finding in study.findings] == ["ST-2"]
    assert study.steps.load_bearing == ()
    assert study.free_swaps == ()
