"""Suggested edits: each clears the finding, brings nothing new, and changes nothing by itself."""

import pytest
from rehearsal_edits import (
    demo_library,
    layered_protection,
    moved_before,
    new_step,
    with_action,
    with_fixture,
    with_step_after,
    without_steps,
)

from signage.ground.problem import Severity
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.variations.repairs import suggest_repairs

P1 = layered_protection()
FAULTS = {
    "rub left out": (without_steps(P1, "rub-after-outer"), "HH-1", "before step hood-off: rub inner gloves"),
    "goggles too early": (
        moved_before(P1, "goggles-off", "hood-off"),
        "LY-1",
        "Move step goggles-off after step rub-after-coverall",
    ),
    "respirator too early": (
        moved_before(P1, "respirator-off", "to-clean-side"),
        "RP-1",
        "Move step respirator-off after step to-clean-side",
    ),
    "wrong layer": (with_action(P1, "rub-after-apron", layer="skin"), "HH-3", "'layer: outer-gloves'"),
    "never removed": (without_steps(P1, "boot-covers-off"), "LY-7", "take off boot covers (bin: bin A)"),
    "zip open": (without_steps(P1, "zip-close"), "EN-3", "before step hood-on: close coverall"),
    "no seal check": (without_steps(P1, "seal-check"), "EN-2", "before step goggles-on: check respirator"),
    "no mat": (without_steps(P1, "stand-on-mat"), "ZN-4", "stand on mat (seconds: 30)"),
    "wrong bin": (with_action(P1, "goggles-off", bin="bin-a"), "BN-3", "'bin: tub-g'"),
    "by the front": (with_action(P1, "respirator-off", technique="front-grab"), "CT-3", "straps-back"),
    "too short": (with_action(P1, "wash-hands", seconds=10), "HH-2", "'seconds: 40'"),
    "standing": (without_steps(P1, "sit-dirty-chair"), "FX-5", "sit on dirty chair"),
    "seated": (without_steps(P1, "stand-up"), "FX-6", "stand up"),
    "need forgotten": (without_steps(P1, "fit-tested"), "EN-5", "meet the need fit tested"),
    "no observer check": (without_steps(P1, "observer-check"), "EN-6", "before step enter-room: inspect"),
    "need after kit": (
        moved_before(P1, "jewellery-off", "observer-check"),
        "EN-10",
        "Move step jewellery-off after step inspect-kit",
    ),
    "zip under the apron": (
        moved_before(P1, "zip-open", "rub-outer-first"),
        "LY-8",
        "Move step zip-open after step rub-after-hood",
    ),
    "zip after the check": (
        moved_before(P1, "zip-close", "enter-room"),
        "EN-11",
        "Move step zip-close after step goggles-on",
    ),
    "uninspected": (without_steps(P1, "inspect-kit"), "EN-1", "inspect inner gloves"),
    "kit forgotten": (without_steps(P1, "goggles-on"), "EN-4", "put on goggles"),
    "not the end": (without_steps(P1, "to-corridor"), "ST-3", "go to zone Corridor"),
    "twice": (with_step_after(P1, "hood-on", new_step("more", "don", item="apron")), "LY-5", "Delete step"),
    "other chair": (with_action(P1, "sit-dirty-chair", chair="clean-chair"), "ZN-5", "'chair: dirty-chair'"),
}


def finding_of(protocol, code):
    return next(f for f in rehearse(demo_library(), protocol).findings if f.code == code)


@pytest.mark.parametrize(("protocol", "code", "words"), FAULTS.values(), ids=FAULTS)
def test_a_single_edit_is_found(protocol, code, words):
    finding = finding_of(protocol, code)
    repairs = suggest_repairs(demo_library(), protocol, finding)
    assert words in " ".join(repair.description for repair in repairs)


@pytest.mark.parametrize(("protocol", "code", "words"), FAULTS.values(), ids=FAULTS)
def test_each_suggestion_clears_the_finding_and_brings_nothing_of_weight(protocol, code, words):
    finding = finding_of(protocol, code)
    known = {each.identity for each in rehearse(demo_library(), protocol).findings}
    repairs = suggest_repairs(demo_library(), protocol, finding)
    assert 1 <= len(repairs) <= 3
    for repair in repairs:
        left = rehearse(demo_library(), repair.protocol).findings
        assert finding.identity not in {each.identity for each in left}
        assert all(each.identity in known or each.severity is Severity.S3 for each in left)


def test_nothing_is_suggested_where_no_single_edit_helps():
    """Without a bin that takes it on either side, the hood can be put nowhere."""
    library = with_fixture(demo_library(), "bin-a", accepts=("apron", "boot-covers", "coverall"))
    (finding,) = rehearse(library, P1).findings
    assert finding.code == "BN-3"
    assert suggest_repairs(library, P1, finding) == ()


def test_the_protocol_itself_is_left_alone():
    protocol = without_steps(P1, "zip-close")
    before = [step.id for step in protocol.steps]
    suggest_repairs(demo_library(), protocol, finding_of(protocol, "EN-3"))
    assert [step.id for step in protocol.steps] == before
