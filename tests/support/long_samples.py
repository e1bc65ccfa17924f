"""Protocols and words longer than the demo's, made from it in memory."""

from dataclasses import replace

import demo

from signage.compose.context import SheetContext
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES
from signage.text.font_set import BUNDLED_FONTS
from signage.words.wording import open_wording


def context_of(library, protocol, tag="en"):
    """A sheet's context for a changed library; stand-in languages have its words too."""
    messages = replace(demo.project(), library=library).messages
    words = {
        name: open_wording(library, messages, demo.ROOT / "locales", name, BUNDLED_FONTS)
        for name in {tag, "en"}
    }
    of = library.protocols[protocol]
    return SheetContext(library, words[tag], words["en"], PICTURES, "2345-6789", protocol=of)


def with_steps(counts, tag="en", protocol="layered-protection", **changes):
    """The protocol with so many steps in each of its phases: its own, then those that stay in a zone."""
    library = demo.project().library
    old = demo.context(protocol=protocol).protocol  # with its critical steps marked
    phases = []
    for phase, count in zip(old.phases, counts, strict=True):
        stays = [step for step in phase.steps if step.action.verb != "move"]
        own = [*phase.steps, *(stays * (count // len(stays) + 1))][:count]
        steps = tuple(replace(step, id=f"{phase.id}-{i}", **changes) for i, step in enumerate(own))
        phases.append(replace(phase, steps=steps))
    new = replace(old, phases=tuple(phases))
    return context_of(replace(library, protocols={**library.protocols, protocol: new}), protocol, tag)


def with_zone_names(name, tag="en", protocol="layered-protection", title=None):
    """The protocol in a ward whose zones all have a name that begins so; with another title."""
    library = demo.project().library
    ward = library.wards[library.protocols[protocol].ward]
    zones = {key: replace(zone, name=f"{name} {key}"[: len(name) + 6]) for key, zone in ward.zones.items()}
    protocols = dict(library.protocols)
    if title:
        protocols[protocol] = replace(protocols[protocol], title=title)
    wards = {**library.wards, ward.id: replace(ward, zones=zones)}
    return context_of(replace(library, wards=wards, protocols=protocols), protocol, tag)
