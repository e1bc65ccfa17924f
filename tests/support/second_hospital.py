"""The long procedure of the second hospital as a library and as a project, and slips that were told of it.

Everything in it is invented; its order is common practice, no source.
"""

from dataclasses import replace
from functools import lru_cache
from pathlib import Path
from tempfile import mkdtemp

from signage.ground.files import write_whole
from signage.load.starter import starter_files
from signage.project import open_project

PROTOCOL = "long-suit"


@lru_cache(maxsize=1)
def project():
    """The starter, written once into a folder of its own."""
    folder = Path(mkdtemp(prefix="second-hospital-"))
    for name, data in starter_files(like="second-hospital").items():
        write_whole(folder / name, data)
    return open_project(folder / "content", folder / "locales")


def library():
    """Its content."""
    return project().library


def protocol():
    """The long procedure."""
    return library().protocols[PROTOCOL]


def with_steps(change):
    """The procedure with each of its steps replaced by what ``change`` makes of it; None leaves it out."""
    phases = []
    for phase in protocol().phases:
        steps = (change(step) for step in phase.steps)
        phases.append(replace(phase, steps=tuple(step for step in steps if step is not None)))
    return replace(protocol(), phases=tuple(phases))


def without(*names):
    """The procedure without some of its steps."""
    return with_steps(lambda step: None if step.id in names else step)


def changed(name, **fields):
    """The procedure with other values in the first movement of a step."""

    def change(step):
        if step.id != name:
            return step
        return replace(step, actions=(replace(step.action, **fields), *step.actions[1:]))

    return with_steps(change)


def moved(name, after):
    """The procedure with one step moved directly behind another one."""
    taken = next(step for step in protocol().steps if step.id == name)
    phases = []
    for phase in protocol().phases:
        steps = []
        for step in phase.steps:
            if step.id != name:
                steps.append(step)
            if step.id == after:
                steps.append(taken)
        phases.append(replace(phase, steps=tuple(steps)))
    return replace(protocol(), phases=tuple(phases))
