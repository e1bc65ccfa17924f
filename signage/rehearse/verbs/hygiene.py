"""Hand hygiene."""

from __future__ import annotations

from signage.model.choices import StepCondition
from signage.model.library import Fixture
from signage.rehearse import local_policy
from signage.rehearse.rules.hands import (
    AGENT_NOT_ALLOWED,
    CHLORINE_ON_SKIN,
    GLOVE_CLEANED_TOO_OFTEN,
    HYGIENE_TOO_SHORT,
    WRONG_HAND_LAYER,
)
from signage.rehearse.rules.places import FIXTURE_ABSENT, FIXTURE_ELSEWHERE
from signage.rehearse.state.body import SKIN
from signage.rehearse.state.level import Level
from signage.rehearse.state.people import Person, Wet
from signage.rehearse.state.scene import Act, Scene
from signage.rehearse.verbs.operating import operate

_MINIMUM = {"rub": local_policy.MINIMUM_RUB, "wash": local_policy.MINIMUM_WASH}
_USUAL_AGENT = {"dispenser": "rub", "sink": "wash"}
"""What a dispenser or sink gives where the ward's file does not say."""


def clean_hands(scene: Scene, act: Act) -> None:
    """Hand hygiene on the outermost layer: skin becomes clean, a glove at best ``reduced``.

    Aimed at another layer it does nothing, so that what was due stays due. Where only the fixture, the
    agent or the time is at fault the finding says so and the hygiene counts, lest one fault shows twice.
    """
    person = act.on
    _find_fixture(scene, act)
    layer = act.action.layer or person.top_layer()
    if layer != person.top_layer():
        wanted = scene.name(person.top_layer())
        message = f"Aimed at: {scene.name(layer)}; outermost at this step: {wanted}."
        scene.report(WRONG_HAND_LAYER, message, item=layer, person=person, field="layer")
        return
    _judge_agent(scene, act, layer)
    _judge_time(scene, act)
    _lower(scene, person)
    person.pending = None
    _begin_to_dry(scene, person, layer, act.action.agent)
    person.has_cleaned_hands = True
    person.fresh_from_contaminated = False


def _begin_to_dry(scene: Scene, person: Person, layer: str, agent: str | None) -> None:
    """A rub leaves the layer wet for the time of local policy, if it names one."""
    wanted = scene.policy.number_if_decided(local_policy.DRYING_SECONDS) if agent == "rub" else 0
    person.wet = Wet(layer, wanted) if wanted > 0 else None


def pass_time(scene: Scene, seconds: int) -> None:
    """Declared time passes: hands that were rubbed dry."""
    for person in scene.people.values():
        if person.wet is not None:
            person.wet.seconds -= seconds
            if person.wet.seconds <= 0:
                person.wet = None


def _find_fixture(scene: Scene, act: Act) -> None:
    """Rules FX-1 and ZN-5: a dispenser or sink that gives this agent must be at hand."""
    for named in act.fixtures:
        scene.use(named)
        if not scene.is_here(named, act.by):
            message = f"Named: {scene.name(named)}; it is not in zone {scene.name(act.by.zone)}."
            scene.report(FIXTURE_ELSEWHERE, message, item=named, person=act.by, field="fixture")
        operate(scene, act.by, named, "fixture")
    if act.fixtures:
        return
    for fixture in scene.setting.fixtures_of_zone[act.by.zone]:
        if _gives(fixture) == act.action.agent:
            scene.use(fixture.id)
            operate(scene, act.by, fixture.id, "fixture")
            return
    message = f"Nothing in zone {scene.name(act.by.zone)} gives: {act.action.agent}."
    scene.report(FIXTURE_ABSENT, message, item=act.action.agent, person=act.by)


def _gives(fixture: Fixture) -> str | None:
    if fixture.kind not in _USUAL_AGENT:
        return None
    return fixture.agent or _USUAL_AGENT[fixture.kind]


def _judge_agent(scene: Scene, act: Act, layer: str) -> None:
    """Rules HH-4 and HH-5."""
    agent = act.action.agent or ""
    policy = scene.policy
    if layer == SKIN and agent == "chlorine":
        if not policy.is_yes(local_policy.CHLORINE_ON_SKIN):
            message = "Chlorine solution on bare hands; local policy does not permit it."
            scene.report(CHLORINE_ON_SKIN, message, item=layer, person=act.on, field="agent")
        return
    key = local_policy.AGENTS_ON_SKIN if layer == SKIN else local_policy.AGENTS_ON_GLOVE
    allowed = policy.words(key)
    if agent not in allowed:
        message = f"{agent} on {scene.name(layer)}; local policy allows: {', '.join(allowed) or 'nothing'}."
        scene.report(AGENT_NOT_ALLOWED, message, item=layer, person=act.on, field="agent")
        return
    is_soiled = act.moment.step.when is StepCondition.IF_SOILED and layer == SKIN
    if is_soiled and agent != "wash" and policy.is_yes(local_policy.SOIL_NEEDS_WASH):
        message = f"{agent} on soiled hands; local policy wants soap and water."
        scene.report(AGENT_NOT_ALLOWED, message, item=layer, person=act.on, field="agent")


def _judge_time(scene: Scene, act: Act) -> None:
    """Rule HH-2; movements that share the time of a technique card were added up before."""
    key = _MINIMUM.get(act.action.agent or "")
    if key is None:
        return
    least = scene.policy.number(key)
    if act.seconds is None or act.seconds < least:
        found = "No time is named" if act.seconds is None else f"{act.seconds} s"
        message = f"{found}; local policy wants at least {least} s."
        scene.report(HYGIENE_TOO_SHORT, message, person=act.on, field="seconds")


def _lower(scene: Scene, person: Person) -> None:
    """The effect of hygiene; rule HH-7 counts how often one pair of gloves is cleaned."""
    glove = person.top_glove()
    if glove is None:
        person.skin = Level.CLEAN
        return
    glove.lower()
    glove.times_cleaned += 1
    limit = scene.policy.number(local_policy.GLOVE_HYGIENE_LIMIT)
    if glove.times_cleaned > limit:
        times = ordinal(glove.times_cleaned)
        message = f"{scene.name(glove.id)} cleaned for the {times} time; local limit: {limit}."
        scene.report(GLOVE_CLEANED_TOO_OFTEN, message, item=glove.id, person=person)


def ordinal(number: int) -> str:
    """An English ordinal such as ``4th``."""
    ending = "th" if 10 <= number % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"
