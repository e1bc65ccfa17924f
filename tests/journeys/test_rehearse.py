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
    done = run(demo, "rehearse", "P1")
    assert "no findings" in done.stdout
    assert done.stdout.count("No finding does not mean safe.") == 1


def test_a_forgotten_rub_is_found_at_the_next_step_with_its_line(run, demo):
    forget(demo, "rub-after-outer")
    done = run(demo, "rehearse", "P1", expect=1)
    assert re.search(r"layered-protection\.yaml:\d+:\d+: S1 HH-1 .*\[step hood-off\]", done.stdout)


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


def test_every_single_slip_is_rehearsed_and_what_passes_clean_is_listed(run, demo):
    told = run(demo, "rehearse", "P1", "--stress").stdout
    assert re.search(r"moved: \d+ orders, \d+ found, \d+ clean", told)
    assert "nothing in common of: hand layer" in told
    result = json.loads(run(demo, "rehearse", "P1", "--stress", "--format", "json").stdout)
    assert {"slip", "step", "place", "reason", "disjoint"} <= set(result["clean"][0])


def test_what_a_step_protects_is_told_by_leaving_it_out(run, demo):
    told = run(demo, "rehearse", "P1", "--why", "rub-after-outer").stdout
    assert "At step hood-off: S1 HH-1" in told
    assert "hand hygiene due after outer gloves since step outer-gloves-off (wearer)" in told
    result = json.loads(run(demo, "rehearse", "P1", "--why", "rub-after-outer", "--format", "json").stdout)
    assert result["worst"] == "S1"
    assert result["without"][0]["because"]


def test_a_step_that_is_not_there_is_answered_with_the_nearest(run, demo):
    assert "Did you mean zip-open?" in run(demo, "rehearse", "P1", "--why", "zip-opn", expect=2).stderr
    assert "stand alone" in run(demo, "rehearse", "P1", "--why", "zip-open", "--stress", expect=2).stderr


WAIVERS = """\
waivers:
  - code: HH-2
    protocol: layered-protection
    step: rub-after-hood
    reason: The dispenser of this ward counts the time.
    role: infection-control nurse
    expires: {expires}
"""


def shorten_a_rub(demo):
    path = demo / "content/protocols/layered-protection.yaml"
    before, step, after = path.read_text(encoding="utf-8").partition("- step: rub-after-hood\n")
    path.write_text(before + step + after.replace("seconds: min-rub", "seconds: 5", 1), encoding="utf-8")


def test_a_finding_is_waived_by_a_role_until_a_day(run, demo):
    shorten_a_rub(demo)
    assert "cannot be approved" in run(demo, "rehearse", "P1", expect=1).stdout
    (demo / "content/waivers.yaml").write_text(WAIVERS.format(expires="2199-12-31"), encoding="utf-8")
    told = run(demo, "rehearse", "P1").stdout
    assert "no findings but those waived" in told
    assert "Waived until 2199-12-31 by the infection-control nurse" in told


def test_a_waiver_that_has_run_out_is_a_fault_of_its_own_with_its_line(run, demo):
    shorten_a_rub(demo)
    (demo / "content/waivers.yaml").write_text(WAIVERS.format(expires="2026-01-31"), encoding="utf-8")
    told = run(demo, "rehearse", "P1", expect=1).stdout
    assert re.search(r"waivers\.yaml:\d+:\d+: S\d WV-1 .*2026-01-31", told)
    assert "HH-2" in told
