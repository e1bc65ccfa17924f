"""The demo's first protocol as it once stood, on the ward and with the kit of today."""

from dataclasses import replace
from functools import cache
from pathlib import Path

import yaml
from rehearsal_edits import demo_library, layered_protection

from signage.model.library import Action, Step

STEPS = Path(__file__).with_name("earlier_layered_protection.yaml")


@cache
def earlier_layered_protection():
    today = layered_protection()
    written = yaml.safe_load(STEPS.read_text(encoding="utf-8"))["phases"]
    phases = tuple(
        replace(
            phase,
            id=entry["phase"],
            theme=entry["theme"],
            seconds=None,
            steps=tuple(map(_step, entry["steps"])),
        )
        for phase, entry in zip(today.phases, written, strict=True)
    )
    return replace(today, phases=phases)


def _step(entry):
    fields = dict(entry)
    name, critical = fields.pop("step"), fields.pop("critical", False)
    if (seconds := fields.get("seconds")) is not None:
        decided = demo_library().policy.get(seconds)
        fields["seconds"] = decided.value if decided else seconds
    if True in fields:  # YAML reads the word "on" as yes
        fields["on"] = fields.pop(True)
    action = Action(verb=fields.pop("do"), **fields)
    return Step(id=name, text=name, picture="", actions=(action,), critical=critical)
