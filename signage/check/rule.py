"""What a rule is: it looks, returns problems and repairs nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Any

from signage.ground.problem import Problem
from signage.ground.rule import S1, Rule

if TYPE_CHECKING:
    from signage.compose.context import LocaleContext, SheetContext
    from signage.compose.sheet_kind import SheetKind
    from signage.drawing.marks import Sheet
    from signage.model.library import Protocol

SHEET_REFUSED = Rule(
    code="SH-0",
    name="sheet-refused",
    severity=S1,
    what="Whether each sheet that the library asks for can be composed and may be printed.",
    why="A sheet that is refused is missing on the ward, and an older one may hang in its place.",
    example="A step card in a language whose words lack one of its texts.",
    cure="Mend what the message names, then run 'signage check' again.",
)


@dataclass(frozen=True)
class SheetSubject:
    """A composed sheet with what it was made from, and what is true for its kind."""

    sheet: Sheet
    context: LocaleContext
    kind: SheetKind[Any]
    cache: dict[str, object] = field(default_factory=dict, compare=False)
    """Where rules of one run share what is slow to make, such as a raster."""

    @property
    def protocol(self) -> Protocol | None:
        """The one protocol that the sheet is about; None for sheets about several."""
        protocols = self.context.protocols
        return protocols[0] if len(protocols) == 1 else None

    @property
    def protocol_context(self) -> SheetContext:
        """The context of a sheet that owes steps or a distance; raises TypeError for others: ask its kind."""
        from signage.compose.context import SheetContext  # noqa: PLC0415 - rules are read without composing

        if not isinstance(self.context, SheetContext):
            raise TypeError(f"{self.kind.name} is not about one protocol")
        return self.context

    def text_problem(self, rule: Rule, message: str, text: str | None) -> Problem:
        """A finding about a text: its place is the entry of its translation, or its line in the content.

        ``text`` is the context of the text, such as ``off/apron-off/detail``; None gives the place of the
        protocol.
        """
        found = self.problem(rule, message, step_of(text, self.protocol))
        place = self.context.wording.place_of(text)
        return replace(found, text=text, place=place if place.path else found.place)

    def problem(self, rule: Rule, message: str, step: str | None = None, hint: str = "") -> Problem:
        """A finding of a rule about this sheet."""
        protocol = self.protocol
        steps = protocol.steps if protocol else ()
        held = next((each for each in steps if each.id == step), None) or protocol or self.context.library
        return rule.problem(
            message,
            held.place,
            hint=hint,
            protocol=self.sheet.protocol or None,
            step=step,
            locale=self.sheet.locale,
            sheet=self.sheet.file_stem,
        )


@dataclass(frozen=True)
class SheetRule:
    """A rule over one composed sheet."""

    rule: Rule
    find: Callable[[SheetSubject], Iterable[Problem]]


def step_of(text: str | None, protocol: Protocol | None) -> str | None:
    """The step of the protocol that a text belongs to, by its context."""
    parts = (text or "").split("/")
    return parts[1] if protocol and len(parts) == 3 and parts[0] == protocol.id else None
