"""The mistake of the tutorial: the hand rub after the outer gloves is forgotten."""

import json
import re


def forget(demo, step):
    path = demo / "content/protocols/layered-protection.yaml"
    text = path.read_text(encoding="utf-8")
    spoiled, count = re.subn(rf"      - step: {step}\n(?:        .*\n|\n)+?(?=      - step: )", "", text)
    assert count == 1
    path.write_text(spoiled, encoding="utf-8")


def test_the_demo_has_no_finding(run, demo):
    for code in ("P1", "P2", "P3", "P4", "P5", "P6", "P7"):
        done = run(demo, "rehearse", code)
        assert "no findings" in done.stdout
        assert "No finding does not mean safe." in done.stdout


def test_a_forgotten_rub_is_found_at_the_next_step_with_its_line(run, demo):
    forget(demo, "rub-after-outer")
    done = run(demo, "rehearse", "P1", expect=1)
    assert re.search(r"layered-protection\.yaml:\d+:\d+: S1 HH-1 .*\[step hood-off\]", done.stdout)


def test_check_finds_it_as_well(run, demo):
    forget(demo, "rub-after-outer")
    problems = json.loads(run(demo, "check", "--format", "json", expect=1).stdout)["problems"]
    assert [(p["code"], p["step"]) for p in problems if p["code"].startswith("HH")] == [("HH-1", "hood-off")]


def test_repairs_are_suggested_and_not_applied(run, demo):
    forget(demo, "rub-after-outer")
    before = (demo / "content/protocols/layered-protection.yaml").read_bytes()
    assert "not applied" in run(demo, "rehearse", "P1", "--repairs", expect=1).stdout
    assert (demo / "content/protocols/layered-protection.yaml").read_bytes() == before


def test_json_has_the_fields_of_the_contract(run, demo):
    result = json.loads(run(demo, "rehearse", "layered-protection", "--format", "json").stdout)
    assert result["protocol"] == "layered-protection"
    assert result["findings"] == []
    assert len(result["trace"]) == len(result["load_bearing"]) == 42
    assert len(result["free_swaps"]) == 11


def test_the_walk_shows_every_step(run, demo):
    done = run(demo, "rehearse", "P1", "--steps")
    assert "dirty-side" in done.stdout
    assert "hygiene after outer-gloves" in done.stdout


def test_an_unknown_protocol_is_answered_with_those_that_exist(run, demo):
    assert "layered-protection" in run(demo, "rehearse", "P11", expect=2).stderr
