"""Each finding says what was where since which step, and who did it."""

from dataclasses import replace
from datetime import date

from rehearsal_edits import (
    demo_library,
    layered_protection,
    moved_before,
    new_step,
    with_action,
    with_step_after,
    without_steps,
)

from signage.pages.rehearsal.page import rehearsal_page
from signage.rehearse.explanation import told_facts
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.report import report_on
from signage.rehearse.variations.study import study_protocol


def explained(protocol):
    rehearsal = rehearse(demo_library(), protocol)
    return "\n".join(
        line
        for finding in rehearsal.findings
        for line in (
            f"{finding.code} {finding.step}",
            *(f"  {told}" for told in told_facts(rehearsal.explain(finding))),
        )
    )


GOGGLES_BEFORE_HOOD = """\
LY-1 goggles-off
  goggles: worn since step goggles-on (wearer); contaminated outside since step enter-room (wearer); \
not worn since step goggles-off (wearer)
  hood: worn since step hood-on (wearer); contaminated outside since step enter-room (wearer)
HH-1 hood-off
  inner gloves: outermost on the hands since step outer-gloves-off (wearer); \
clean since step inner-gloves-on (wearer)
  wearer: hand hygiene due after goggles since step goggles-off (wearer)
  goggles: not worn since step goggles-off (wearer)"""

BARE_HANDS_AT_THE_ZIP = """\
CT-1 zip-open
  bare hands: bare since step inner-gloves-off (wearer); clean from the start
  wearer: hand hygiene due after inner gloves since step inner-gloves-off (wearer)
  coverall: worn since step coverall-on (wearer); contaminated outside since step enter-room (wearer); \
zip open since step zip-open (wearer)"""

OPEN_ON_ENTRY = """\
EN-3 enter-room
  wearer: in zone Anteroom from the start
  coverall: worn since step coverall-on (wearer); zip open since step coverall-on (wearer); \
contaminated outside since step enter-room (wearer)"""


def test_a_garment_that_comes_off_under_another():
    assert GOGGLES_BEFORE_HOOD in explained(moved_before(layered_protection(), "goggles-off", "hood-off"))


def test_a_bare_hand_at_what_was_in_the_room():
    assert BARE_HANDS_AT_THE_ZIP in explained(
        moved_before(layered_protection(), "inner-gloves-off", "zip-open")
    )


def test_a_fastener_that_is_open_since_the_garment_went_on():
    assert OPEN_ON_ENTRY in explained(without_steps(layered_protection(), "zip-close"))


def test_who_did_it_is_whoever_the_step_names():
    """The observer takes the apron, and is named as the one since whose step the apron is off."""
    protocol = with_action(layered_protection(), "apron-off", by="observer", on="wearer")
    told = explained(protocol)
    assert "RO-1 apron-off" in told
    assert "apron: worn since step apron-on (wearer)" in told
    assert "not worn since step apron-off (observer)" in told


def test_a_fixture_that_somebody_made_dirty():
    touch = new_step("touch-chair", "touch", target="clean-chair")
    library = demo_library()
    protocol = with_step_after(layered_protection(), "to-dirty-side", touch)
    rehearsal = rehearse(library, protocol)
    facts = [fact for finding in rehearsal.findings for fact in rehearsal.explain(finding)]
    assert any(fact.thing == "clean-chair" for fact in facts)


def test_every_finding_about_a_step_says_where_it_comes_from():
    for step in layered_protection().steps:
        rehearsal = rehearse(demo_library(), without_steps(layered_protection(), step.id))
        for finding in rehearsal.findings:
            facts = rehearsal.explain(finding)
            assert facts, (step.id, finding)
            states = {state.step for state in rehearsal.trace}
            assert all(fact.step is None or (fact.step in states and fact.by) for fact in facts)


def test_json_and_page_tell_the_same_facts():
    library, protocol = demo_library(), without_steps(layered_protection(), "rub-after-outer")
    report = report_on(
        replace(library, waivers=()), protocol, study_protocol(library, protocol), date(2027, 3, 1)
    )
    (finding,) = [each for each in report.as_json()["findings"] if each["code"] == "HH-1"]
    assert {
        "thing": "inner-gloves",
        "name": "inner gloves",
        "state": "outermost on the hands",
        "since": "outer-gloves-off",
        "by": ["wearer"],
    } in finding["because"]
    page = rehearsal_page(library, report)
    assert "inner gloves: outermost on the hands since step outer-gloves-off (wearer)" in page
