"""A long procedure with kit that has parts of its own, and what a reviewer says of slips in it.

Which slips a reviewer names is common practice, no source.
"""

from dataclasses import replace

import second_hospital

from signage.rehearse.rehearsal import rehearse
from signage.rehearse.variations.study import study_protocol

HANDLED_BY_THE_INNERMOST = {("CT-7", "hood-back"), ("CT-7", "flap-open"), ("CT-7", "zip-down")}
"""The procedure leaves the suit to the gloves next to the skin: to be said, for local policy to decide."""


def found(protocol):
    findings = rehearse(second_hospital.library(), protocol).findings
    return {(finding.code, finding.step) for finding in findings} - HANDLED_BY_THE_INNERMOST


def test_as_it_is_written_only_the_innermost_gloves_are_named():
    whole = rehearse(second_hospital.library(), second_hospital.protocol()).findings
    assert {(finding.code, finding.step) for finding in whole} == HANDLED_BY_THE_INNERMOST
    study = study_protocol(second_hospital.library(), second_hospital.protocol())
    assert {finding.code for finding in study.findings} == {"CT-7"}
    for name in ("hand-basics", "unforeseen"):
        other = second_hospital.library().protocols[name]
        assert study_protocol(second_hospital.library(), other).findings == (), name


def test_what_a_reviewer_says_of_slips():
    sits = second_hospital.without("stand-undressing")
    assert {("FX-6", "suit-off"), ("FX-2", "suit-off"), ("FX-6", "go-to-wash")} <= found(sits)
    bare = second_hospital.moved("shoes-wipe", after="wash-last")
    assert {("CT-1", "shoes-wipe")} <= found(bare)
    assert ("HH-6", "shoes-wipe") in found(second_hospital.moved("shoes-wipe", after="back-to-dressing"))
    cases = {
        "the hood is never raised": (second_hospital.without("hood-up"), ("EN-4", "go-in")),
        "the flap stays open": (second_hospital.without("flap-down"), ("EN-3", "go-in")),
        "a suit is torn open": (
            second_hospital.changed("suit-off", technique="front-grab"),
            ("LY-10", "suit-off"),
        ),
        "dispensers of which one is elsewhere": (
            second_hospital.changed("rub-under", any_of=("sensor-dispenser", "dressing-dispenser")),
            ("ZN-5", "rub-under"),
        ),
        "a zip is opened under its flap": (
            second_hospital.moved("zip-down", after="rub-after-hood"),
            ("LY-8", "zip-down"),
        ),
        "the hood slides back under the shield": (
            second_hospital.moved("hood-back", after="rub-under"),
            ("LY-8", "hood-back"),
        ),
        "the hood slides back inside the room": (
            second_hospital.moved("hood-back", after="go-in"),
            ("EN-9", "hood-back"),
        ),
        "the headband is set after the observer has looked": (
            second_hospital.moved("band-set", after="looked-over"),
            ("EN-11", "band-set"),
        ),
        "a drink is had with the suit on": (
            second_hospital.moved("drink-first", after="suit-on"),
            ("EN-10", "drink-first"),
        ),
        "shoes are wiped too briefly": (
            second_hospital.changed("shoes-wipe", seconds=5),
            ("FX-4", "shoes-wipe"),
        ),
        "the phone goes along": (second_hospital.without("phone-away"), ("ZN-7", "go-in")),
        "gloves go onto wet hands": (second_hospital.without("hands-dry"), ("HH-10", "under-gloves-on")),
        "own clothes stay on": (second_hospital.without("scrubs-on"), ("LY-3", "suit-on")),
    }
    silent = [what for what, (protocol, wanted) in cases.items() if wanted not in found(protocol)]
    assert silent == []


def test_every_alternative_at_a_step_has_to_be_fit_for_it():
    """A dispenser that must be pushed by hand spoils the choice between it and others."""
    ward = second_hospital.library().wards["long-ward"]
    by_hand = replace(ward.fixtures["buddy-dispenser"], opening="hand")
    changed = replace(ward, fixtures={**ward.fixtures, by_hand.id: by_hand})
    library = replace(second_hospital.library(), wards={changed.id: changed})
    findings = rehearse(library, second_hospital.protocol()).findings
    assert ("CT-6", "rub-over") in {(finding.code, finding.step) for finding in findings}


def test_needless_findings_are_gone():
    """Looking, fitting and sitting to dress are no decoration, and a hood that hangs hides nothing."""
    study = study_protocol(second_hospital.library(), second_hospital.protocol())
    assert {"sit-to-dress", "band-set", "stretch"} <= set(study.steps.unexplained)
    assert not [finding for finding in study.findings if finding.code in {"ST-4", "LY-2", "CT-3", "HH-1"}]


def test_where_policy_means_the_innermost_gloves_to_do_it_nothing_is_said():
    protocol = second_hospital.protocol()
    for name in ("hood-back", "flap-open", "zip-down"):
        step = next(step for step in protocol.steps if step.id == name)
        assert step.action.layer is None
    changed = second_hospital.changed("zip-down", layer="under-gloves")
    left = rehearse(second_hospital.library(), changed).findings
    assert {finding.step for finding in left} == {"hood-back", "flap-open"}
