"""What a step protects is told by leaving it out."""

from rehearsal_edits import demo_library, layered_protection, new_step, step_of, with_step_after

from signage.ground.problem import Severity
from signage.rehearse.variations.alternatives import leave_one_out
from signage.rehearse.variations.purpose import purpose_of


def purpose(name, protocol=None):
    protocol = protocol or layered_protection()
    return purpose_of(demo_library(), protocol, step_of(protocol, name))


def test_every_step_is_as_grave_as_leaving_one_out_says():
    criticality = leave_one_out(demo_library(), layered_protection()).criticality
    assert {name: purpose(name).worst for name in criticality} == criticality


def test_it_tells_whom_contamination_would_reach():
    """Without the inner gloves the hands are bare when the coverall is opened."""
    without = purpose("inner-gloves-on")
    assert without.worst is Severity.S1
    assert ("wearer", "hands") in {(each.person, each.site) for each in without.exposures}
    assert all(facts for _finding, facts in without.findings)


def test_a_step_without_effect_protects_nothing_that_the_model_sees():
    idle = with_step_after(layered_protection(), "fit-tested", new_step("pause", "wait", seconds=5))
    told = purpose("pause", idle).as_json()
    assert (told["worst"], told["without"], told["exposures"]) == (None, [], [])
