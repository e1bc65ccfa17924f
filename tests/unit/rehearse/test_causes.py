"""Findings are grouped by what causes them."""

from signage.rehearse.causes import group_findings
from signage.rehearse.finding import Finding
from signage.rehearse.rules.table import RULE_OF


def finding(code, item=None, others=(), step="step"):
    return Finding(RULE_OF[code], "", "protocol", step, "wearer", item, others)


def shape(*findings):
    return [(g.cause.code, [f.code for f in g.consequences]) for g in group_findings(findings)]


def test_what_is_never_removed_explains_its_own_findings_and_those_of_others():
    assert shape(
        finding("LY-1", "coverall", ("boot-covers",)),
        finding("RP-2", "respirator", ("boot-covers",)),
        finding("ZN-2", "boot-covers"),
        finding("LY-7", "boot-covers"),
    ) == [("LY-7", ["LY-1", "RP-2", "ZN-2"])]


def test_removed_while_covered_comes_before_other_findings_of_the_item():
    assert shape(finding("HH-1", "goggles"), finding("LY-1", "goggles", ("hood",))) == [("LY-1", ["HH-1"])]


def test_within_an_item_the_first_finding_is_the_cause():
    assert shape(finding("RP-1", "respirator"), finding("BN-2", "respirator")) == [("RP-1", ["BN-2"])]


def test_different_items_are_different_causes_in_the_order_of_the_steps():
    assert shape(finding("BN-3", "goggles"), finding("LY-4", "coverall")) == [("BN-3", []), ("LY-4", [])]


def test_findings_about_no_item_stand_alone():
    assert shape(finding("EN-6"), finding("EN-6", step="other")) == [("EN-6", []), ("EN-6", [])]
