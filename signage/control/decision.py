"""The one place that decides what may be printed of a protocol in a language, and as what."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date

from signage.ground.counting import counted
from signage.ground.place import NOWHERE, Place
from signage.ground.problem import Problem, Severity
from signage.model.mark import Mark

_MOST_GAPS = 3
"""Gaps that are told one by one; more are counted."""


@dataclass(frozen=True)
class Reason:
    """Why a sheet is not released. ``place`` is where the cause stands, NOWHERE if it has no place."""

    text: str
    place: Place = NOWHERE

    def __str__(self) -> str:
        """The sentence, behind its place where it has one."""
        return f"{self.place}: {self.text}" if self.place.path else self.text


@dataclass(frozen=True, kw_only=True)
class ReleaseFacts:
    """What is known of a protocol in a language on a day.

    ``obstacles`` keep a sheet from being made at all: text that does not fit, a letter without a shape.
    ``gaps`` are messages without a text to print, and ``causes`` what was found at them. ``problems`` are
    the findings of content, order, words and of the composed sheet itself that no waiver of this day
    excuses. ``has_checked_words`` says that every text of the language was checked by a second person and
    none is left as a machine made it. ``withdrawal`` says who withdrew it, why and when. ``uncounted`` are
    why sign-offs that were made do not count, and ``changes`` what has changed since it was signed.
    """

    locale: str
    today: date
    review_by: date
    is_in_use: bool = True
    obstacles: tuple[Reason, ...] = ()
    gaps: tuple[str, ...] = ()
    causes: tuple[Problem, ...] = ()
    problems: tuple[Problem, ...] = ()
    has_checked_words: bool = False
    is_order_signed: bool = False
    are_words_signed: bool = False
    withdrawal: Reason | None = None
    uncounted: tuple[Reason, ...] = ()
    changes: tuple[Reason, ...] = ()
    is_demo: bool = False


@dataclass(frozen=True)
class Decision:
    """What prints unasked, and the reasons that keep it from being more.

    ``on_request`` is what ``--proof`` prints instead of a refusal; REFUSED where nothing may be printed.
    ``is_withdrawn``: it is refused because it was withdrawn, whatever else is known of it.
    """

    mark: Mark
    reasons: tuple[Reason, ...] = ()
    on_request: Mark = Mark.REFUSED
    is_withdrawn: bool = False

    def granted(self, *, wants_proof: bool) -> Mark:
        """What prints, given whether a proof was asked for in place of a refusal."""
        return self.on_request if wants_proof and self.mark is Mark.REFUSED else self.mark


def decide(facts: ReleaseFacts) -> Decision:
    """The first row of the table that fits wins; a row refuses, asks for a proof, or leaves a draft.

    What no row holds back is released: in a demonstration as one, else for use.
    """
    for row in _ROWS:
        reasons = row.reasons(facts)
        if reasons:
            return Decision(row.mark, reasons, row.on_request, row.is_withdrawal)
    mark = Mark.DEMONSTRATION if facts.is_demo else Mark.NONE
    return Decision(mark, (), mark)


def standing_against(facts: ReleaseFacts) -> tuple[tuple[Reason, str], ...]:
    """All that keeps a protocol in a language from being signed, each with what to do about it."""
    unsigned = replace(
        facts, withdrawal=None, is_order_signed=True, are_words_signed=True, uncounted=(), changes=()
    )
    return tuple((reason, row.cure) for row in _ROWS for reason in row.reasons(unsigned))


def _withdrawn(facts: ReleaseFacts) -> tuple[Reason, ...]:
    return (facts.withdrawal,) if facts.withdrawal else ()


def _obstacles(facts: ReleaseFacts) -> tuple[Reason, ...]:
    return facts.obstacles


def _words_are_not_all_there(facts: ReleaseFacts) -> tuple[Reason, ...]:
    reasons: list[Reason] = []
    if not facts.is_in_use:
        reasons.append(
            Reason(
                f"{facts.locale} is in work for this protocol: only proofs are printed ('--proof'). "
                f"Finish its words, then set its state in library.yaml to in-use."
            )
        )
    told = {cause.text for cause in facts.causes}
    if facts.gaps and (len(facts.gaps) > _MOST_GAPS or not told.issuperset(facts.gaps)):
        reasons.append(_gaps_in_one_line(facts))
    else:
        reasons.extend(map(_found, facts.causes))
    return tuple(reasons)


def _gaps_in_one_line(facts: ReleaseFacts) -> Reason:
    first = ", ".join(f"'{context}'" for context in facts.gaps[:_MOST_GAPS])
    left = len(facts.gaps) - _MOST_GAPS
    count = counted(len(facts.gaps), "text")
    return Reason(
        f"{count} of this protocol cannot be printed in {facts.locale}, missing, doubtful or without their "
        f"placeholders: {first}{f' and {left} more' if left > 0 else ''}. "
        f"Complete locales/{facts.locale}/LC_MESSAGES.",
        facts.causes[0].place if facts.causes else NOWHERE,
    )


def _can_hurt(facts: ReleaseFacts) -> tuple[Reason, ...]:
    return tuple(_found(each) for each in facts.problems if each.severity is Severity.S1)


def _nobody_accepted(facts: ReleaseFacts) -> tuple[Reason, ...]:
    return tuple(_found(each) for each in facts.problems if each.severity is Severity.S2)


def _nobody_signed(facts: ReleaseFacts) -> tuple[Reason, ...]:
    reasons: list[Reason] = []
    if not facts.has_checked_words:
        reasons.append(Reason(f"The words of {facts.locale} have not all been checked by a second person."))
    if not facts.is_order_signed:
        reasons.append(Reason("Nobody has signed the order of the protocol."))
    if not facts.are_words_signed:
        reasons.append(Reason(f"Nobody has signed its words in {facts.locale}."))
    return (*reasons, *facts.uncounted) if reasons else ()


def _has_changed(facts: ReleaseFacts) -> tuple[Reason, ...]:
    return facts.changes


def _review_is_overdue(facts: ReleaseFacts) -> tuple[Reason, ...]:
    if facts.today <= facts.review_by:
        return ()
    return (Reason(f"Review overdue: it was due by {facts.review_by.isoformat()}."),)


def _found(problem: Problem) -> Reason:
    where = f" [step {problem.step}]" if problem.step else ""
    return Reason(f"{problem.code} {problem.message}{where}", problem.place)


@dataclass(frozen=True)
class _Row:
    """Where ``reasons`` gives any, ``mark`` is printed; ``on_request`` if a proof is asked for.

    ``cure`` is what to do before it can be signed.
    """

    reasons: Callable[[ReleaseFacts], tuple[Reason, ...]]
    mark: Mark
    on_request: Mark
    cure: str = ""
    is_withdrawal: bool = False


_ROWS = (
    _Row(_withdrawn, Mark.REFUSED, Mark.REFUSED, is_withdrawal=True),
    _Row(_obstacles, Mark.REFUSED, Mark.REFUSED, "Mend the text or the font that is named."),
    _Row(
        _words_are_not_all_there,
        Mark.REFUSED,
        Mark.PROOF,
        "Complete the words; 'signage words progress' counts.",
    ),
    _Row(_can_hurt, Mark.REFUSED, Mark.PROOF, "Mend it: nobody can accept what can hurt."),
    _Row(_nobody_accepted, Mark.DRAFT, Mark.DRAFT, "Mend it, or let a role accept it (waivers.yaml)."),
    _Row(_nobody_signed, Mark.DRAFT, Mark.DRAFT, "A second person checks them: 'signage words check-off'."),
    _Row(_has_changed, Mark.DRAFT, Mark.DRAFT),
    _Row(
        _review_is_overdue,
        Mark.DRAFT,
        Mark.DRAFT,
        "Review the protocol, then write the next review-by.",
    ),
)
"""In the order in which they are asked: what was withdrawn, then what nobody can waive, then what a sign-off
answers, and what has changed under one."""
