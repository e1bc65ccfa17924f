"""What is told about a rehearsed protocol."""

import json
from dataclasses import replace
from datetime import date

from rehearsal_edits import demo_library, layered_protection, with_action, without_steps

from signage.model.waiver import Waiver
from signage.rehearse.rehearsal import SIMPLIFICATIONS
from signage.rehearse.report import report_on
from signage.rehearse.variations.study import study_protocol

TODAY = date(2027, 3, 1)


def waiver(protocol="layered-protection", expires=TODAY):
    return Waiver(
        code="HH-2",
        protocol=protocol,
        step="rub-after-hood",
        reason="The dispenser counts the time.",
        role="infection-control nurse",
        expires=expires,
    )


def report(protocol, *waivers):
    library = replace(demo_library(), waivers=waivers)
    return report_on(library, protocol, study_protocol(library, protocol), TODAY)


def short_rub():
    return with_action(layered_protection(), "rub-after-hood", seconds=5)


def test_a_finding_without_a_waiver_stands_against_approval_but_not_against_a_draft():
    told = report(short_rub())
    assert [problem.code for problem in told.problems] == ["HH-2"]
    assert told.waived.blocks_approval
    assert not told.waived.blocks_release


def test_a_waived_finding_is_told_apart_with_who_accepts_it_and_until_when():
    told = report(short_rub(), waiver())
    assert told.problems == []
    assert not told.waived.blocks_approval
    (waived,) = told.as_json()["waived"]
    assert (waived["code"], waived["role"], waived["expires"]) == (
        "HH-2",
        "infection-control nurse",
        "2027-03-01",
    )


def test_an_expired_waiver_stands_against_approval_beside_its_finding():
    told = report(short_rub(), waiver(expires=date(2027, 2, 28)))
    assert [problem.code for problem in told.problems] == ["HH-2", "WV-1"]
    assert told.waived.blocks_approval


def test_waivers_of_other_protocols_are_no_matter_of_this_one():
    assert report(layered_protection(), waiver(protocol="contact-room")).problems == []


def test_what_can_hurt_blocks_release():
    assert report(without_steps(layered_protection(), "rub-after-outer")).waived.blocks_release


def test_the_json_has_needs_and_simplifications_in_every_report():
    data = json.loads(json.dumps(report(layered_protection()).as_json()))
    assert data["simplifications"] == list(SIMPLIFICATIONS)
    assert data["equipment"]["hygiene"] == {"rub": 10, "wash": 1}
    assert {kit["item"] for kit in data["equipment"]["kit"]} >= {"respirator", "goggles", "outer-gloves"}
    assert (data["blocks_release"], data["blocks_approval"]) == (False, False)
