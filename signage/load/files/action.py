"""One movement of a protocol's file, and the times that stand in such files."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field

from signage.load import faults
from signage.load.files.kit import Technique
from signage.load.files.policy import AGENTS
from signage.load.kind import Kind, fault_error, wanted_text
from signage.load.kinds import IDENTIFIER, WHOLE_NUMBER, Identifier, ReadableText, YesNo, one_of
from signage.load.suggestion import shorten
from signage.load.validation import Entry
from signage.model.choices import ActionVerb


def _read_seconds(value: Any) -> str:
    text = wanted_text(value, "a number of seconds")
    if WHOLE_NUMBER.fullmatch(text) or IDENTIFIER.fullmatch(text):
        return text
    raise fault_error(
        faults.WRONG_KIND,
        f"'{shorten(text)}' is neither a number of seconds nor the name of a policy value.",
        "Write digits only, such as 20, or a policy value, such as min-rub.",
    )


Seconds = Annotated[
    str,
    Kind(
        _read_seconds,
        "seconds",
        "a whole number, or the name of a value of policy.yaml that is one",
        {
            "anyOf": [
                {"type": "integer", "minimum": 0},
                {"type": "string", "pattern": f"^({IDENTIFIER.pattern})$"},
            ]
        },
    ),
]
"""A whole number, or the identifier of a policy value that is one."""


class ActionEntry(Entry):
    """One movement; which keys go with which verb is judged by the step grammar."""

    verb: Annotated[ActionVerb, one_of(*ActionVerb)] = Field(alias="do")
    """What is done; the table of verbs below says which other keys go with it."""

    by: Identifier | None = None
    """Who does it: a person of this protocol; without it, the wearer."""

    on: Identifier | None = None
    """Whom it is done to: a person of this protocol; without it, who does it."""

    item: Identifier | None = None
    """The garment or item that it is done with; with 'fasten', a waste bag as well, which is then tied."""

    technique: Technique | None = None
    """How the garment comes off, where that differs from kit.yaml."""

    together: Identifier | None = None
    """A second garment that comes off in the same movement, or the bag that goes into a clean one."""

    bin: Identifier | None = None
    """The bin or tub that it goes into."""

    layer: Identifier | None = None
    """The hand layer that is cleaned, or that local policy means to handle the kit: skin or a glove."""

    agent: Annotated[str, one_of(*AGENTS)] | None = None
    """What hands or surfaces are cleaned with."""

    seconds: Seconds | None = None
    """How long it takes at least; texts show it as {time}."""

    part: Identifier | None = None
    """The fastener, adjuster or part of the garment, or the movement of hand hygiene."""

    check: Identifier | None = None
    """The check of the item, as kit.yaml names it."""

    to: Identifier | None = None
    """The zone that somebody goes to, or the step or protocol that a branch leads to."""

    chair: Identifier | None = None
    """The chair that somebody sits on."""

    need: Identifier | None = None
    """What is seen to, as the 'needs' of a zone name it, such as bare-wrists."""

    fixture: Identifier | None = None
    """The fixture that is used, cleaned or replaced."""

    amount: ReadableText | None = None
    """How much agent is taken, in words; texts show it as {amount}."""

    target: Identifier | None = None
    """What is touched: a part of the body, a garment, a waste bag, a fixture or a thing."""

    fresh: YesNo = False
    """Whether what is put on comes straight out of a closed pack."""

    thing: Identifier | None = None
    """The thing that is taken, put down or cleaned: one of the 'things' of this protocol."""

    any_of: tuple[Identifier, ...] = ()
    """Fixtures of which any one will do, such as a dispenser with sensor and one for the elbow."""

    technique_of: ReadableText | None = None
    """The hand technique that is followed, as 'protocol/phase'; its time counts where none is written."""

    mouth: YesNo = False
    """Whether the need is met through the mouth, as a drink is."""
