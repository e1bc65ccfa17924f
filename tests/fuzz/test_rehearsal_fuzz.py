"""No content, however wrong, makes the rehearsal fail; it always answers with findings."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st
from rehearsal_edits import demo_library, layered_protection
from rehearsal_mutations import mutated_libraries, mutated_protocols

from signage.ground.problem import Severity
from signage.model.library import Actor
from signage.rehearse.equipment import derive_equipment
from signage.rehearse.explanation import told_facts
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.variations.purpose import purpose_of
from signage.rehearse.variations.repairs import suggest_repairs
from signage.rehearse.variations.stress_review import review_stress
from signage.rehearse.variations.study import study_protocol

FEW = settings(max_examples=4)


@settings(max_examples=150)
@given(mutated_protocols())
def test_any_steps(protocol):
    result = rehearse(demo_library(), protocol)
    assert all(isinstance(finding.severity, Severity) for finding in result.findings)
    assert len(result.problems()) == len(result.findings)
    assert sum(1 + len(group.consequences) for group in result.groups) == len(result.findings)


@settings(max_examples=80)
@given(mutated_protocols(), mutated_libraries())
def test_any_steps_with_any_facts(protocol, library):
    rehearse(library, protocol)
    derive_equipment(library, protocol)


@settings(max_examples=30)
@given(mutated_protocols(), st.sampled_from(["starts_in", "wears", "role"]))
def test_any_people(protocol, field):
    strange = {"starts_in": "nowhere", "wears": ("nothing", "outer-gloves"), "role": "observer"}
    person = replace(protocol.people[0], **{field: strange[field]})
    rehearse(demo_library(), replace(protocol, people=(person, *protocol.people[1:])))
    rehearse(demo_library(), replace(protocol, people=()))
    rehearse(demo_library(), replace(protocol, people=(Actor(id="x", role="observer", starts_in="room"),)))


@FEW
@given(mutated_protocols())
def test_study_and_repairs_of_any_steps(protocol):
    study = study_protocol(demo_library(), protocol)
    assert study.as_json()["protocol"] == "layered-protection"
    for group in study.rehearsal.groups[:2]:
        for repair in suggest_repairs(demo_library(), protocol, group.cause):
            left = rehearse(demo_library(), repair.protocol).findings
            assert group.cause.identity not in {finding.identity for finding in left}


@FEW
@given(mutated_protocols(), mutated_libraries())
def test_every_slip_and_every_purpose_of_any_steps(protocol, library):
    told = review_stress(library, protocol).as_json()
    assert sum(told["reasons"].values()) == len(told["clean"])
    for step in protocol.steps[::7]:
        assert purpose_of(library, protocol, step).as_json()["step"] == step.id


@settings(max_examples=80)
@given(mutated_protocols(), mutated_libraries())
def test_every_finding_can_be_explained(protocol, library):
    rehearsal = rehearse(library, protocol)
    for finding in (*rehearsal.findings, *rehearsal.withheld):
        told_facts(rehearsal.explain(finding))


def test_a_protocol_without_steps():
    phases = tuple(replace(phase, steps=()) for phase in layered_protection().phases)
    result = rehearse(demo_library(), replace(layered_protection(), phases=phases))
    assert [finding.code for finding in result.findings] == ["ST-3"]
    assert result.exposures == ()
