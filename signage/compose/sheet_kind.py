"""What is true for a kind of sheet, as one value: whoever must know it asks the value, never the name."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from enum import Flag, StrEnum, auto
from typing import TYPE_CHECKING, Generic, TypeVar

from signage.compose.paper_choice import PaperChoice
from signage.compose.papers import PAPERS, Paper, paper_of
from signage.compose.shown_fields import NEVER_LEFT_OUT, Duty, Shown

if TYPE_CHECKING:
    from signage.compose.context import LocaleContext
    from signage.drawing.marks import Sheet

Context = TypeVar("Context", bound="LocaleContext")


class Per(StrEnum):
    """What there is one sheet of; of a ward, its zones and fixtures once, however many protocols it has.

    The library knows no learners: their sheet is made once a protocol, and the name is written by hand.
    """

    PROTOCOL = "protocol"
    PHASE = "phase"
    WARD = "ward"
    ZONE = "zone"
    FIXTURE = "fixture"
    LEARNER = "learner"
    PICTURES = "set of pictures"


class Offer(StrEnum):
    """Whether a run without wishes makes it. Nobody asks for what is made ``INSTEAD`` of another kind.

    What is ``OF_CONTROL`` is made by the commands of document control, from what they know.
    """

    USUAL = "unasked"
    ON_REQUEST = "on request"
    INSTEAD = "instead of another"
    OF_CONTROL = "by document control"


class Imposition(StrEnum):
    """How pages are laid on paper: one each, four to cut, or eight to fold with one slit."""

    NONE = "none"
    FOUR_UP = "four up"
    FOLD_EIGHT = "folded to eight"


_PARTS = {Imposition.NONE: (1, 1), Imposition.FOUR_UP: (2, 2), Imposition.FOLD_EIGHT: (4, 2)}
"""Columns and rows of pages on a sheet of paper."""


class Owed(Flag):
    """What a sheet owes its reader, each proved by the rules named here.

    ``STEPS``: every step of its protocol or phase once, in order (SH-4). ``RULER``: 50 mm on every page
    (SH-12). ``TAG``: the draft tag on every page, card or panel, and ``RIBBON``: the draft sentence on four
    edges, while nobody has signed it (SH-13). ``AIR``: paper between things and columns of even weight
    (SH-15, SH-16). ``DISTANCE``: headlines that can be read from the wall slots that name its protocol
    (SH-19). ``GRID``: its big steps on one grid (SH-21).
    """

    NOTHING = 0
    STEPS = auto()
    RULER = auto()
    TAG = auto()
    RIBBON = auto()
    AIR = auto()
    DISTANCE = auto()
    GRID = auto()


class ControlText(StrEnum):
    """What a page says of itself (SH-14), as messages call it."""

    PROTOCOL = "the protocol code"
    REVISION = "the revision code"
    LANGUAGE = "the name of its language"
    OWNER = "the role of its owner"
    REVIEW = "the review date"
    POLICY = "the local-policy caution"
    SIGNED = "who signed it and when"


class RulePlace(StrEnum):
    """Where the rule of a phase stands: once, on every page, or on the steps that it is about."""

    ONCE = "once"
    EVERY_PAGE = "every page"
    STEPS = "steps"


class CodeTarget(StrEnum):
    """Where the codes of a sheet lead: nowhere, for it has none, to its protocol, or to each step."""

    NONE = "none"
    PROTOCOL = "protocol"
    STEP = "step"


@dataclass(frozen=True)
class SheetOrder(Generic[Context]):
    """One document to compose. ``part`` is the id of the phase, zone, fixture or ward, empty for a whole.

    ``width`` and ``height`` are those of a page before it is laid on the paper, in millimetres. ``seed``
    decides what is mixed.
    """

    context: Context
    paper: Paper
    width: float
    height: float
    part: str = ""
    seed: int = 0


@dataclass(frozen=True)
class SheetKind(Generic[Context]):
    """A kind of sheet. ``name`` is that of ``--sheet`` and of the contract.

    ``place`` orders kinds in lists and runs. ``singular`` and ``plural`` are what messages call it, and
    ``summary`` what help says of it. ``shows`` says of each field of a step or phase whether it must be there
    and is empty for sheets without steps. ``table`` makes a table (CSV) beside it, ``gallery``
    names the pictures of an overview that is written where pictures of pages are. ``is_seeded``: ``--seed``
    changes it. ``signs`` are pictures that it may show besides those of its steps.

    Raises ValueError where a sheet that owes steps may leave out what a reader must not miss.
    """

    name: str
    singular: str
    plural: str
    summary: str
    place: int
    per: Per
    papers: PaperChoice
    compose: Callable[[SheetOrder[Context]], Sheet]
    offer: Offer = Offer.ON_REQUEST
    owes: Owed = Owed.RULER | Owed.TAG
    control: frozenset[ControlText] = frozenset(ControlText)
    shows: Mapping[Shown, Duty] = field(default_factory=dict, hash=False)
    rules: RulePlace = RulePlace.ONCE
    code: CodeTarget = CodeTarget.NONE
    imposition: Imposition = Imposition.NONE
    table: Callable[[SheetOrder[Context]], str] | None = None
    gallery: Callable[[SheetOrder[Context]], tuple[str, ...]] | None = None
    is_seeded: bool = False
    signs: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        left_out = [shown for shown in NEVER_LEFT_OUT if self.shows.get(shown) is not Duty.OWED]
        if Owed.STEPS in self.owes and left_out:
            raise ValueError(f"{self.name} owes steps, so it shows {', '.join(left_out)} too")

    @property
    def title(self) -> str:
        """The plural as the first word of a sentence."""
        return self.plural[0].upper() + self.plural[1:]

    def why_no_paper(self, papers: Sequence[str], source: str) -> str:
        """The sentence, with its cure, on papers of which none will do; ``source`` says whose they are."""
        choice = self.papers
        if choice.names:
            told = f"{self.title} are {choice.made_on}, not with {source}."
            return f"{told} Leave --paper away, or name one of them."
        small = [paper for paper in papers if paper_of(paper).short_side < choice.least_side]
        large = [
            paper.name
            for paper in PAPERS.values()
            if paper.short_side >= choice.least_side and not paper.is_landscape
        ]
        return (
            f"No {self.singular} is made of {source}: {', '.join(small)} is {choice.too_small}. "
            f"Use one of {', '.join(large)}, or ask for it all the same with '--sheet {self.name}'."
        )

    def imposition_on(self, paper: Paper) -> Imposition:
        """How its pages lie on a paper: alone on one that holds a single page."""
        return Imposition.NONE if paper.name in self.papers.single else self.imposition

    def page_size(self, paper: Paper) -> tuple[float, float]:
        """Width and height in millimetres of a page that is composed for a paper."""
        imposition = self.imposition_on(paper)
        columns, rows = _PARTS[imposition]
        laid = laid_paper(imposition, paper)
        return laid.width / columns, laid.height / rows


def laid_paper(imposition: Imposition, paper: Paper) -> Paper:
    """The paper on the side that an imposition needs: folds lie, cards to cut stand."""
    if imposition is Imposition.NONE or paper.is_landscape is (imposition is Imposition.FOLD_EIGHT):
        return paper
    return paper.turned()
