"""Random faults in the demo protocol and in its kit, ward and policy, for hypothesis."""

from dataclasses import fields, replace

from hypothesis import strategies as st
from rehearsal_edits import demo_library, layered_protection

from signage.model.garment import GarmentPart
from signage.model.library import Action, Door
from signage.rehearse.state.body import SITES
from signage.rehearse.techniques import TECHNIQUES
from signage.rehearse.verbs.table import VERBS

WARD = demo_library().wards["lantern-bay"]
NAMES = (
    *demo_library().garments,
    *WARD.fixtures,
    *WARD.zones,
    *SITES,
    *TECHNIQUES,
    *VERBS,
    *("wearer", "observer", "skin", "rub", "wash", "chlorine", "zip", "seal", "palms", "clean-hands"),
    *("headband", "apron-off", "", "no such thing"),
)
name = st.sampled_from(NAMES)
OTHERWISE_DRAWN = {"place", "places", "seconds", "verb", "fresh", "any_of", "mouth"}
NAMED = [each.name for each in fields(Action) if each.name not in OTHERWISE_DRAWN]


@st.composite
def field_changes(draw):
    """One or two fields of an action with any value of the pool, of whatever kind it is."""
    changes = draw(st.dictionaries(st.sampled_from(NAMED), st.one_of(st.none(), name), max_size=2))
    if changes.get("by", "") is None:
        changes["by"] = "wearer"
    if draw(st.booleans()):
        changes["verb"] = draw(st.sampled_from(list(VERBS)))
    if draw(st.booleans()):
        changes["seconds"] = draw(st.one_of(st.none(), st.integers(-5, 100)))
    if draw(st.booleans()):
        changes["any_of"] = tuple(draw(st.lists(name, max_size=2)))
    return changes


@st.composite
def mutated_protocols(draw):
    """The demo protocol after some random edits: steps deleted, repeated, moved and rewritten."""
    protocol = layered_protection()
    steps = [(phase.id, step) for phase in protocol.phases for step in phase.steps]
    for _ in range(draw(st.integers(1, 6))):
        kind = draw(st.sampled_from(["delete", "repeat", "move", "change", "when", "join"]))
        at = draw(st.integers(0, len(steps) - 1))
        phase, step = steps[at]
        if kind == "delete" and len(steps) > 2:
            del steps[at]
        elif kind == "repeat":
            steps.insert(at, (phase, replace(step, id=f"{step.id}-{len(steps)}")))
        elif kind == "move":
            del steps[at]
            steps.insert(draw(st.integers(0, len(steps))), (phase, step))
        elif kind == "change":
            action = replace(step.action, **draw(field_changes()))
            steps[at] = phase, replace(step, actions=(action, *step.actions[1:]))
        elif kind == "when":
            steps[at] = phase, replace(step, when=draw(st.sampled_from(["if-soiled", "if-torn"])))
        else:
            steps[at] = (
                phase,
                replace(step, actions=(*step.actions, *draw(st.sampled_from(steps))[1].actions)),
            )
    phases = tuple(
        replace(phase, steps=tuple(step for owner, step in steps if owner == phase.id))
        for phase in protocol.phases
    )
    return replace(protocol, phases=phases)


@st.composite
def mutated_libraries(draw):
    """The demo library with some facts of kit, ward and policy changed or gone."""
    library = demo_library()
    garments, fixtures, zones, policy = (
        dict(mapping) for mapping in (library.garments, WARD.fixtures, WARD.zones, library.policy)
    )
    key = draw(st.sampled_from(sorted(garments)))
    some = st.lists(st.sampled_from(sorted(garments)), max_size=4).map(tuple)
    garments[key] = replace(
        garments[key],
        over=draw(some),
        needs_under=draw(some),
        covers=draw(st.lists(st.sampled_from(SITES), max_size=5).map(tuple)),
        technique=draw(st.one_of(st.none(), name)),
        parts={"hood": GarmentPart(id="hood", raised=("hair",), over=draw(some))},
        adjusters=("headband",),
    )
    if draw(st.booleans()):
        del garments[draw(st.sampled_from(sorted(garments)))]
    fixture = draw(st.sampled_from(sorted(fixtures)))
    fixtures[fixture] = replace(
        fixtures[fixture],
        kind=draw(name),
        zone=draw(name),
        capacity=draw(st.one_of(st.none(), st.integers(0, 3))),
    )
    if draw(st.booleans()):
        del zones[draw(st.sampled_from(sorted(zones)))]
    decision = draw(st.sampled_from(sorted(policy)))
    policy[decision] = replace(
        policy[decision], value=draw(st.one_of(st.integers(-1, 60), st.booleans(), name))
    )
    if draw(st.booleans()):
        del policy[draw(st.sampled_from(sorted(policy)))]
    door = Door(start=draw(name), end=draw(name))
    ward = replace(WARD, fixtures=fixtures, zones=zones, doors=(*WARD.doors, door))
    return replace(library, garments=garments, policy=policy, wards={ward.id: ward})
