"""The words of terms.yaml that carry the meaning of steps, as frozen values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from signage.model.located import Located


@dataclass(frozen=True, kw_only=True)
class Verb(Located):
    """An act by the words for it. ``acts`` are what it is said of, such as ``don``, ``rub`` or ``enter``.

    ``approved`` holds forms by locale; ``opposite`` is the id of the verb that turns the act round.
    """

    id: str
    source: str
    acts: tuple[str, ...]
    opposite: str | None = None
    note: str = ""
    approved: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)


@dataclass(frozen=True, kw_only=True)
class Negation(Located):
    """How one language says no.

    ``markers`` deny, ``softer`` ones ("without", "away from") keep apart, ``idioms`` hold a marker and
    deny nothing. ``either_way`` are words, such as "stay", that another language may well put with a
    negation; ``hinges`` ("until") join clauses, one of which another language may deny.
    """

    markers: tuple[str, ...]
    softer: tuple[str, ...] = ()
    idioms: tuple[str, ...] = ()
    either_way: tuple[str, ...] = ()
    hinges: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Vocabulary:
    """The words of terms.yaml that carry the meaning of a step; all but ``verbs`` by locale.

    ``restriction`` are the words for "only", ``bare_hands`` those that speak of hands or skin.
    """

    verbs: tuple[Verb, ...] = ()
    negation: Mapping[str, Negation] = field(default_factory=dict, hash=False)
    restriction: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)
    bare_hands: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)
