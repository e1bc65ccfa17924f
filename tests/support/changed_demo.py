"""The demo with steps that its own protocols do not have: conditions, cautions, bins without a letter."""

from dataclasses import replace

from demo import project

from signage.produce.requests import SheetRequest, compose_request


def changed_project(changes, *, protocol="layered-protection", fixtures=None):
    """The project with other fields of some steps (by step id) and other fixtures of the ward (by id).

    New texts have no translation, so sheets with them are those of the source language.
    """
    library = project().library
    old = library.protocols[protocol]
    phases = tuple(
        replace(phase, steps=tuple(replace(step, **changes.get(step.id, {})) for step in phase.steps))
        for phase in old.phases
    )
    ward = library.wards[old.ward]
    fixed = {name: replace(each, **(fixtures or {}).get(name, {})) for name, each in ward.fixtures.items()}
    return replace(
        project(),
        library=replace(
            library,
            protocols={**library.protocols, protocol: replace(old, phases=phases)},
            wards={**library.wards, ward.id: replace(ward, fixtures=fixed)},
        ),
    )


def changed_sheet(made, kind, phase="", *, tag="en", paper="A3", protocol="layered-protection"):
    """A sheet of a changed project."""
    return compose_request(made, SheetRequest(protocol, tag, kind, phase, paper))
