"""What can be wrong with the site or its address: each rule with its reason and its cure."""

from __future__ import annotations

from dataclasses import dataclass

from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Severity


@dataclass(frozen=True, slots=True)
class PageRule:
    """A rule by its code; ``name`` is the fault."""

    code: str
    name: str
    severity: Severity
    what: str
    why: str
    example: str
    cure: str

    def problem(
        self, message: str, place: Place = NOWHERE, locale: str | None = None, sheet: str | None = None
    ) -> Problem:
        """A finding of this rule; its hint is the cure."""
        return Problem(
            self.code, self.name, self.severity, message, self.cure, place, locale=locale, sheet=sheet
        )


OUT_OF_REACH = PageRule(
    "PG-1",
    "address-out-of-reach",
    Severity.S3,
    "The training address in library.yaml is not one that a phone on the ward can open.",
    "The code on a wall leads to it for years; behind localhost every phone finds only itself.",
    "training-address: http://localhost:8080",
    "Write the address under which the ward's phones reach the training pages, such as "
    "http://ward-pages.internal:8080.",
)
DEAD_LINK = PageRule(
    "PG-2",
    "dead-link",
    Severity.S1,
    "A QR code of a sheet leads to a page, or to a place in a page, that the built site does not have.",
    "Somebody scans it in gloves and in a hurry, and finds nothing.",
    "http://ward-pages.internal:8080/ar/p1/apron-off/ without ar/p1/apron-off/index.html",
    "Run 'signage pages' and 'signage draw' on the same content, and copy the whole site to its server.",
)

RULES = (OUT_OF_REACH, DEAD_LINK)
"""Every rule, in the order of the codes."""
