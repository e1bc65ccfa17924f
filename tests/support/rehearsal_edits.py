"""The demo protocol, and edits of a protocol, ward or kit made in memory."""

from dataclasses import replace
from functools import lru_cache
from pathlib import Path

from signage.load.library import load_library
from signage.model.library import Action, PolicyValue, Step
from signage.rehearse.rehearsal import rehearse

CONTENT = Path(__file__).resolve().parents[2] / "content"


@lru_cache(maxsize=1)
def demo_library():
    return load_library(CONTENT)


def layered_protection():
    return demo_library().protocols["layered-protection"]


def _with_steps(protocol, edit):
    phases = tuple(replace(phase, steps=tuple(edit(phase))) for phase in protocol.phases)
    return replace(protocol, phases=phases)


def without_steps(protocol, *names):
    return _with_steps(protocol, lambda phase: (s for s in phase.steps if s.id not in names))


def with_step_before(protocol, name, *new):
    def edit(phase):
        for step in phase.steps:
            if step.id == name:
                yield from new
            yield step

    return _with_steps(protocol, edit)


def with_step_after(protocol, name, *new):
    def edit(phase):
        for step in phase.steps:
            yield step
            if step.id == name:
                yield from new

    return _with_steps(protocol, edit)


def with_action(protocol, name, **changes):
    """The protocol with the one action of a step changed."""

    def edit(phase):
        for step in phase.steps:
            if step.id == name:
                yield replace(step, actions=(replace(step.action, **changes),))
            else:
                yield step

    return _with_steps(protocol, edit)


def step_of(protocol, name):
    return next(step for step in protocol.steps if step.id == name)


def moved_before(protocol, name, target):
    return with_step_before(without_steps(protocol, name), target, step_of(protocol, name))


def new_step(name, verb, **fields):
    return Step(id=name, text=name, picture=name, actions=(Action(verb=verb, **fields),))


def with_fixture(library, name, **changes):
    ward = library.wards["lantern-bay"]
    fixtures = {**ward.fixtures, name: replace(ward.fixtures[name], **changes)}
    return replace(library, wards={**library.wards, ward.id: replace(ward, fixtures=fixtures)})


def with_zone(library, name, **changes):
    ward = library.wards["lantern-bay"]
    zones = {**ward.zones, name: replace(ward.zones[name], **changes)}
    return replace(library, wards={**library.wards, ward.id: replace(ward, zones=zones)})


def with_garment(library, name, **changes):
    garments = {**library.garments, name: replace(library.garments[name], **changes)}
    return replace(library, garments=garments)


def with_policy(library, name, value):
    known = library.policy.get(name) or PolicyValue(id=name, value=value, source="test", owner="test")
    policy = {**library.policy, name: replace(known, value=value)}
    return replace(library, policy=policy)


def found(protocol, library=None):
    """What the rehearsal finds: pairs of rule and step, in the order of the steps."""
    findings = rehearse(library or demo_library(), protocol).findings
    return [(finding.code, finding.step) for finding in findings]
