"""One side of a comparison: a library as it was or is, with its words and what was found in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from signage.ground.problem import Problem
from signage.model.library import Library


@dataclass(frozen=True, kw_only=True)
class Edition:
    """A library at one time. ``name`` is how the person called it.

    ``words`` are the texts by language and context, None for one that may not be printed; of these
    ``missing`` are not there at all, the others are doubtful. ``contexts`` names by protocol the texts that
    its sheets may show, ``contents`` what its printed code stands for, and ``hashes`` the full fingerprint
    of each protocol in each language. ``pictures`` are the fingerprints of the scenes in use.
    """

    name: str
    library: Library
    words: Mapping[str, Mapping[str, str | None]]
    missing: Mapping[str, frozenset[str]] = field(default_factory=dict)
    contexts: Mapping[str, frozenset[str]] = field(default_factory=dict)
    contents: Mapping[str, Mapping[str, Any]] = field(default_factory=dict)
    hashes: Mapping[tuple[str, str], str] = field(default_factory=dict)
    pictures: Mapping[str, str] = field(default_factory=dict)
    findings: tuple[Problem, ...] = ()

    def text(self, tag: str, context: str) -> str | None:
        """A text as it is written; None where there is none to print."""
        return self.words.get(tag, {}).get(context)
