"""The grammar of steps: which verbs there are, which keys each uses, and one shape for both ways to write.

``do: don`` with ``item: apron`` beside it, and ``do:`` with a list of movements, both become a step node
whose ``do`` is a list of action nodes.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from signage.ground.problem import Problem, Reading, read_each
from signage.load import faults
from signage.load.suggestion import shorten, suggest
from signage.load.yaml.nodes import Node, Sequence, Table, Text, child, items_of
from signage.model.choices import ActionVerb

STEP_KEYS = (
    "step", "text", "detail", "posture", "pace", "why", "caution", "picture", "when", "critical", "negation",
    "rationale", "again", "do",
)  # fmt: skip
ACTION_KEYS = (
    "do", "by", "on", "item", "technique", "together", "bin", "layer", "agent", "seconds", "part", "check",
    "to", "chair", "need", "fixture", "amount", "target", "fresh", "thing", "any-of", "technique-of",
    "mouth",
)  # fmt: skip
_FOR_EVERY_VERB = ("do", "by", "on")


@dataclass(frozen=True, slots=True)
class VerbKeys:
    """The keys that a verb needs, those that it may have beside them, and those of which it needs one."""

    needed: tuple[str, ...] = ()
    possible: tuple[str, ...] = ()
    either: tuple[str, ...] = ()


_HYGIENE_KEYS = ("layer", "seconds", "part", "amount", "fixture", "any-of", "technique-of")

VERBS = {
    ActionVerb.NEED: VerbKeys(("need",), ("mouth",)),
    ActionVerb.INSPECT: VerbKeys((), ("item",)),
    ActionVerb.CHECK: VerbKeys(("item", "check")),
    ActionVerb.DON: VerbKeys(("item",), ("fresh",)),
    ActionVerb.FASTEN: VerbKeys(("item",), ("part", "layer", "together")),
    ActionVerb.UNFASTEN: VerbKeys(("item",), ("part", "layer")),
    ActionVerb.DOFF: VerbKeys(("item",), ("technique", "together", "bin", "layer")),
    ActionVerb.DISCARD: VerbKeys((), ("item", "bin")),
    ActionVerb.HYGIENE: VerbKeys(("agent",), _HYGIENE_KEYS),
    ActionVerb.TOUCH: VerbKeys(("target",)),
    ActionVerb.ADJUST: VerbKeys((), ("part",), ("item", "target")),
    ActionVerb.MOVE: VerbKeys(("to",)),
    ActionVerb.SIT: VerbKeys(("chair",)),
    ActionVerb.STAND: VerbKeys(),
    ActionVerb.DISINFECT: VerbKeys((), ("seconds", "agent", "amount"), ("fixture", "thing")),
    ActionVerb.MAT: VerbKeys((), ("seconds", "fixture")),
    ActionVerb.WAIT: VerbKeys(("seconds",)),
    ActionVerb.SAY: VerbKeys(),
    ActionVerb.HANDOVER: VerbKeys(("item", "on")),
    ActionVerb.REPLACE: VerbKeys(("fixture",)),
    ActionVerb.BRANCH: VerbKeys(("to",)),
    ActionVerb.WIPE: VerbKeys((), ("agent", "seconds", "amount", "fixture", "any-of"), ("item", "thing")),
    ActionVerb.RAISE: VerbKeys(("item", "part"), ("layer",)),
    ActionVerb.LOWER: VerbKeys(("item", "part"), ("layer",)),
    ActionVerb.DRINK: VerbKeys(),
    ActionVerb.CHANGE_CLOTHES: VerbKeys(("item",), ("bin", "fresh")),
    ActionVerb.TAKE: VerbKeys((), ("fixture",), ("thing", "item")),
    ActionVerb.PUT_DOWN: VerbKeys((), ("fixture",), ("thing", "item")),
}
"""The verbs of the step grammar with their keys; ``by`` and ``on`` go with every verb."""

HYGIENE_PARTS = (
    "product", "palms", "backs", "between", "finger-backs", "thumbs", "fingertips", "dry", "wet", "rinse",
    "close-tap",
)  # fmt: skip
"""The movements of hand hygiene that a technique card shows one by one."""


_OWN_KEYS_OF_A_REPETITION = ("step", "again", "when", "critical", "rationale")
"""Whatever else a step that repeats another one says, it says through that one."""


def normal_form(protocol: Node) -> Reading[Node]:
    """The protocol with ``do`` as a list in every step; keys beside a list are reported.

    A step that repeats another one holds stand-ins for what it takes from that one.
    """
    phases = child(protocol, "phases")
    if not isinstance(protocol, Table) or not isinstance(phases, Sequence):
        return protocol
    items = yield from read_each(map(_phase, phases.items))
    return _with(protocol, phases=Sequence(items, phases.place))


def _with(table: Table, **replaced: Node) -> Table:
    """The mapping with some values replaced."""
    return replace(table, values={**table.values, **replaced})


def _phase(phase: Node) -> Reading[Node]:
    """A phase with its steps in normal form."""
    steps = child(phase, "steps")
    if not isinstance(phase, Table) or not isinstance(steps, Sequence):
        return phase
    items = yield from read_each(map(_step, steps.items))
    return _with(phase, steps=Sequence(items, steps.place))


def _step(step: Node) -> Reading[Node]:
    """A step whose action keys, if they stand beside ``do``, have moved into a list of one action."""
    if not isinstance(step, Table):
        return step
    beside = [key for key in step.values if key in ACTION_KEYS and key != "do"]
    for key in step.values:
        if key not in STEP_KEYS and key not in ACTION_KEYS:
            yield faults.UNKNOWN_KEY.problem(
                f"The key '{shorten(key)}' is not known in a step.",
                step.key_place(key),
                hint=suggest(key, (*STEP_KEYS, *ACTION_KEYS), "Known keys"),
            )
    if "again" in step.values:
        return (yield from _repetition(step))
    kept = {key: value for key, value in step.values.items() if key in STEP_KEYS}
    verb = step.values.get("do")
    if isinstance(verb, Text) and not verb.is_absent:
        values = {"do": verb, **{key: step.values[key] for key in beside}}
        kept["do"] = Sequence((Table(values, verb.place, step.key_places),), verb.place)
    elif isinstance(verb, Sequence):
        for key in beside:
            yield faults.MISFIT_KEY.problem(
                f"'{key}' stands beside a list of movements, so it belongs to none of them.",
                step.key_place(key),
                hint="Write it into the movement that it belongs to.",
            )
    return replace(step, values=kept)


def _repetition(step: Table) -> Reading[Node]:
    """A step that repeats another one, with stand-ins in the place of what it takes from there."""
    for key in step.values:
        if key in (*STEP_KEYS, *ACTION_KEYS) and key not in _OWN_KEYS_OF_A_REPETITION:
            yield faults.MISFIT_KEY.problem(
                f"'{key}' stands beside 'again', and the step takes it from the one that it repeats.",
                step.key_place(key),
                hint="Delete it, or write the step out without 'again'.",
            )
    place = step.values["again"].place
    nothing = Table({"do": Text(ActionVerb.SAY, place)}, place)
    stand_ins = {"text": Text("again", place), "picture": Text("again", place)}
    own = {key: value for key, value in step.values.items() if key in _OWN_KEYS_OF_A_REPETITION}
    return replace(step, values={**own, **stand_ins, "do": Sequence((nothing,), place)})


def action_problems(action: Node) -> Iterator[Problem]:
    """Keys that say nothing to the verb of an action, and keys that its verb needs and lacks."""
    verb = child(action, "do")
    if not isinstance(action, Table) or not isinstance(verb, Text) or verb.text not in VERBS:
        return
    keys = VERBS[ActionVerb(verb.text)]
    usable = (*_FOR_EVERY_VERB, *keys.needed, *keys.either, *keys.possible)
    for key in action.values:
        if key in ACTION_KEYS and key not in usable:
            uses = ", ".join(usable[1:])
            yield faults.MISFIT_KEY.problem(
                f"'{key}' says nothing to the verb '{verb.text}'.",
                action.key_place(key),
                hint=f"Delete it, or choose the verb that uses it; '{verb.text}' uses: {uses}.",
            )
    where = "Add '{}: …' inside the braces." if action.is_in_braces else "Add a line that begins with '{}:'."
    for key in keys.needed:
        if key not in action.values:
            yield faults.MISFIT_KEY.problem(
                f"The verb '{verb.text}' needs '{key}'.", verb.place, hint=where.format(key)
            )
    if keys.either and not set(keys.either) & set(action.values):
        wanted = " or ".join(f"'{key}'" for key in keys.either)
        yield faults.MISFIT_KEY.problem(
            f"The verb '{verb.text}' needs {wanted}.", verb.place, hint="Add one of them."
        )


def steps_of(protocol: Node) -> list[Table]:
    """All steps of a protocol in normal form that are mappings."""
    found: list[Table] = []
    for phase in items_of(protocol, "phases"):
        found.extend(step for step in items_of(phase, "steps") if isinstance(step, Table))
    return found


def actions_of(step: Node) -> list[Table]:
    """All actions of a step in normal form that are mappings."""
    return [action for action in items_of(step, "do") if isinstance(action, Table)]
