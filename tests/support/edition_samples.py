"""The demo as a side of a comparison, with other steps, kit, policy and words."""

from dataclasses import replace
from datetime import date
from functools import lru_cache

import demo

from signage.produce.comparing import edition_of
from signage.produce.release import Releases

DAY = date(2026, 11, 26)
PROTOCOL = "contact-room"


@lru_cache(maxsize=1)
def edition():
    """The demo as it is."""
    return _edition_of(demo.project())


def with_library(**fields):
    """The demo with other fields of its library; catalogues are as they are."""
    project = demo.project()
    return _edition_of(replace(project, library=replace(project.library, **fields)))


def with_steps(change):
    """The demo with other steps in one protocol: ``change`` is given the id of each phase and its steps."""
    library = demo.project().library
    protocol = library.protocols[PROTOCOL]
    phases = tuple(
        replace(phase, steps=tuple(change(phase.id, list(phase.steps)) or phase.steps))
        for phase in protocol.phases
    )
    return with_library(protocols={**library.protocols, PROTOCOL: replace(protocol, phases=phases)})


def with_words(changed, tag, context, text):
    """An edition with another text in a language."""
    return replace(changed, words={**changed.words, tag: {**changed.words[tag], context: text}})


def _edition_of(project):
    return edition_of(Releases(project, DAY), project, "an edition")
