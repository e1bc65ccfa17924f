"""What the page of a rehearsal shows of each step and person: finished words, marks and figures."""

from __future__ import annotations

from collections import defaultdict, deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from signage.ground.problem import Severity
from signage.model.choices import ActionVerb, PersonRole, StepCondition
from signage.model.library import Library, Protocol, Step
from signage.pages.rehearsal.body_map import BodyMap, body_map
from signage.rehearse.finding import Finding
from signage.rehearse.state.level import Level
from signage.rehearse.state.setting import Setting, prepare
from signage.rehearse.trace import PersonState, StepState, WornState
from signage.rehearse.variations.study import Study
from signage.rehearse.waivers import Waived
from signage.words.placeholders import fill, isolate, placeholder_names
from signage.words.step_values import values_of_step


@dataclass(frozen=True, slots=True)
class HandLayer:
    """A layer on the hands and the word of its level."""

    name: str
    level: str


@dataclass(frozen=True, slots=True)
class PersonView:
    """A person after a step. ``hands`` run from the outermost layer to the skin, as one sees them.

    ``changes`` say what was put on, taken off, opened or closed, what is held and where the person sits.
    """

    name: str
    zone: str
    has_moved: bool
    figure: BodyMap
    description: str
    hands: tuple[HandLayer, ...]
    changes: tuple[str, ...]
    due: str | None


@dataclass(frozen=True, slots=True)
class StepMark:
    """A finding at its step; ``number`` is that in the list of findings."""

    number: int
    code: str
    severity: Severity
    is_waived: bool


@dataclass(frozen=True, slots=True)
class StepMap:
    """A step with everybody after it. ``main`` is the person it is about, None where it was not rehearsed.

    ``phase`` is the title of its phase where the phase begins. ``done_by`` names others who act.
    ``without`` is the worst finding when the step is left out.
    """

    index: int
    number: int
    phase: str | None
    headline: str
    condition: str | None
    is_hygiene: bool
    done_by: tuple[str, ...]
    marks: tuple[StepMark, ...]
    without: Severity | None
    is_critical: bool
    main: PersonView | None
    others: tuple[PersonView, ...]

    @property
    def worst(self) -> Severity | None:
        """The severity of the worst finding that stands at this step."""
        return min((mark.severity for mark in self.marks if not mark.is_waived), default=None)


def step_maps(
    library: Library, protocol: Protocol, study: Study, numbers: Mapping[Finding, int], waived: Waived
) -> tuple[StepMap, ...]:
    """Every step of the protocol in order, rehearsed or not, numbered within its phase as on its sheets."""
    setting = prepare(library, protocol)
    states = _states(study)
    maps: list[StepMap] = []
    before: StepState | None = None
    for phase in protocol.phases:
        for number, step in enumerate(phase.steps, start=1):
            state = states[step.id].popleft() if states[step.id] else None
            main, others = _people(setting, step, state, before)
            maps.append(
                StepMap(
                    index=len(maps) + 1,
                    number=number,
                    phase=phase.title if number == 1 else None,
                    headline=_headline(library, protocol, step),
                    condition=None if step.when is StepCondition.ALWAYS else step.when.replace("-", " "),
                    is_hygiene=step.action.verb is ActionVerb.HYGIENE,
                    done_by=_others_who_act(step, main),
                    marks=tuple(_marks(step, waived, numbers)),
                    without=study.steps.criticality.get(step.id),
                    is_critical=step.id in study.steps.critical,
                    main=main,
                    others=others,
                )
            )
            before = state or before
    return tuple(maps)


def _headline(library: Library, protocol: Protocol, step: Step) -> str:
    """The words of a step with its own values, or with what cannot be filled as it is written."""
    if not placeholder_names(step.text):
        return step.text
    try:
        values = values_of_step(library, protocol, step)
        names = [library.garments[item].name for item in values.items]
        zone = library.wards[protocol.ward].zones[values.zone].name if values.zone else ""
        found = {
            "time": f"{values.seconds}\u00a0s",
            "item": ", ".join(names),
            "bin": ", ".join(values.bins),
            "zone": zone,
            "amount": values.amount or "",
        }
        return fill(step.text, {name: isolate(found[name]) for name in values.filled})
    except KeyError:
        return step.text


def _states(study: Study) -> dict[str, deque[StepState]]:
    """The states by step; a step that stands twice in a protocol has two."""
    states: dict[str, deque[StepState]] = defaultdict(deque)
    for state in study.rehearsal.trace:
        states[state.step].append(state)
    return states


def _marks(step: Step, waived: Waived, numbers: Mapping[Finding, int]) -> Iterator[StepMark]:
    for finding in waived.standing:
        if finding.step == step.id:
            yield StepMark(numbers[finding], finding.code, finding.severity, is_waived=False)
    for finding, _waiver in waived.waived:
        if finding.step == step.id:
            yield StepMark(numbers[finding], finding.code, finding.severity, is_waived=True)


def _people(
    setting: Setting, step: Step, state: StepState | None, before: StepState | None
) -> tuple[PersonView | None, tuple[PersonView, ...]]:
    """The person a step is about, and the others."""
    if state is None or not state.people:
        return None, ()
    about = _person_about(setting.protocol, step)
    earlier = {person.person: person for person in before.people} if before else {}
    views = {each.person: _person_view(setting, each, earlier.get(each.person)) for each in state.people}
    main = views.get(about) or next(iter(views.values()))
    return main, tuple(view for view in views.values() if view is not main)


def _person_about(protocol: Protocol, step: Step) -> str:
    """On whom a step acts, else who does it; what an observer does alone is about the first person."""
    observers = {person.id for person in protocol.people if person.role is PersonRole.OBSERVER}
    action = step.action
    if action.on is not None:
        return action.on
    return protocol.people[0].id if action.by in observers else action.by


def _others_who_act(step: Step, main: PersonView | None) -> tuple[str, ...]:
    actors = dict.fromkeys(action.by for action in step.actions)
    return tuple(_plain(actor) for actor in actors if main is None or _plain(actor) != main.name)


def _person_view(setting: Setting, state: PersonState, before: PersonState | None) -> PersonView:
    hands = tuple(HandLayer(_layer(setting, layer), level.word) for layer, level in reversed(state.hands))
    return PersonView(
        name=_plain(state.person),
        zone=setting.name(state.zone),
        has_moved=before is not None and before.zone != state.zone,
        figure=body_map(state, setting.garments),
        description=". ".join(_sentences(setting, state)) + ".",
        hands=hands,
        changes=tuple(_changes(setting, state, before)),
        due=setting.name(state.hygiene_due) if state.hygiene_due else None,
    )


def _changes(setting: Setting, state: PersonState, before: PersonState | None) -> Iterator[str]:
    """What differs from the step before, and what does not show on the figure."""
    if before is not None:
        now, then = ({worn.garment: worn for worn in each.worn} for each in (state, before))
        yield from (f"on: {setting.name(item)}" for item in now if item not in then)
        yield from (f"off: {setting.name(item)}" for item in then if item not in now)
        for item in now:
            is_open = set(now[item].open_fasteners)
            was_open = set(then[item].open_fasteners) if item in then else set()
            yield from (f"open: {_plain(fastener)}" for fastener in sorted(is_open - was_open))
            yield from (f"closed: {_plain(fastener)}" for fastener in sorted(was_open - is_open))
    if state.held:
        yield f"in hand: {setting.names(state.held)}"
    if state.seat is not None:
        yield f"sits on {_plain(state.seat)}"


def _sentences(setting: Setting, state: PersonState) -> Iterator[str]:
    """The whole state in words, for those who do not see the figure."""
    yield f"{_plain(state.person)}, {setting.name(state.zone)}"
    hands = ", ".join(f"{_layer(setting, layer)} {level.word}" for layer, level in state.hands)
    yield f"Hands from the skin outwards: {hands}"
    worn = "; ".join(_worn_words(setting, each) for each in state.worn)
    yield f"Worn: {worn}" if worn else "Nothing of the declared kit is worn"
    if state.bare:
        yield f"Bare: {', '.join(_plain(site) for site in state.bare)}"
    yield f"Soles {state.soles.word}"
    if state.seat is not None:
        yield f"Sits on {_plain(state.seat)}"
    if state.held:
        yield f"In hand: {setting.names(state.held)}"
    if state.exposures:
        places = ", ".join(f"{_plain(e.site)} by {setting.name(e.source)}" for e in state.exposures)
        yield f"Exposed: {places}"
    if state.hygiene_due:
        yield f"Hand hygiene is due, after {setting.name(state.hygiene_due)}"


def _worn_words(setting: Setting, worn: WornState) -> str:
    """A garment with the surfaces that are not clean, and what stands open."""
    surfaces = (
        ("outside", worn.outside),
        ("inside", worn.inside),
        ("back", worn.back),
        ("straps", worn.straps),
    )
    unclean = [f"{name} {level.word}" for name, level in surfaces if level is not Level.CLEAN]
    opened = [f"{_plain(fastener)} open" for fastener in worn.open_fasteners]
    return (
        f"{setting.name(worn.garment)} {', '.join(unclean or ['clean'])}{''.join(f', {o}' for o in opened)}"
    )


def _layer(setting: Setting, layer: str) -> str:
    return "skin" if layer == "skin" else setting.name(layer)


def _plain(name: str) -> str:
    """An identifier as words."""
    return name.replace("-", " ")


def numbers_by_phase(protocol: Protocol, names: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """Phases with the numbers of those of their steps that are named, such as ``("Put on", "1-3, 7")``."""
    wanted = set(names)
    rows = []
    for phase in protocol.phases:
        numbers = [number for number, step in enumerate(phase.steps, start=1) if step.id in wanted]
        if numbers:
            rows.append((phase.title, _ranges(numbers)))
    return tuple(rows)


def _ranges(numbers: Sequence[int]) -> str:
    """Rising numbers with runs of three or more written as a range."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    parts = [f"{run[0]}\u2013{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs]
    return ", ".join(parts)
