"""How the review of a stressed protocol looks on the terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from signage.cli.report import say
from signage.ground.counting import counted

if TYPE_CHECKING:
    from collections.abc import Iterator

    from signage.rehearse.variations.commuting import Reason
    from signage.rehearse.variations.stress_review import CleanGroup, StressReview

_TOLD = 3
"""How many things in common are told of one line; the JSON has all of them."""

_PLACES_NAMED = 12
"""To how many places a line names them; the JSON names all."""


def print_stress(review: StressReview) -> None:
    """Counts by slip, then the clean orders by reason, those without a reason first."""
    from signage.rehearse.rehearsal import NOT_SAFE
    from signage.rehearse.variations.stress_review import MEANINGS

    stress, protocol = review.stress, review.protocol
    say(f"{protocol.code} {protocol.title}: every single slip, rehearsed until its first new finding.")
    if stress.walked.found.findings:
        count = counted(len(stress.walked.found.findings), "finding")
        say(f"The order as it is written has {count} of its own; only further ones count here.")
    for slip, number in stress.rehearsed.items():
        clean = stress.clean_count(slip)
        say(f"  {slip.value.replace('-', ' ')}: {number} orders, {number - clean} found, {clean} clean")
    if not stress.clean:
        say("No order that differs passes clean.")
        return
    say("\nOrders that pass clean although they differ, by reason:")
    for grounds, meaning in MEANINGS.items():
        if not review.count(grounds):
            continue
        say(f"\n{meaning} ({review.count(grounds)})")
        for group in review.groups[grounds]:
            say(f"  {_headline(group)}")
            for line in _lines(group.reason):
                say(f"      {line}")
    say("\nA reason says what the model follows, and no more: 'signage rehearse' lists what it leaves out.")
    say(NOT_SAFE)


def _headline(group: CleanGroup) -> str:
    """Such as ``zip-close moved: after boot-covers-on, respirator-on``."""
    slip = group.slip.value.replace("-", " ")
    if len(group.places) > _PLACES_NAMED:
        return f"{group.step} {slip}, at {len(group.places)} places"
    by_word: dict[str, list[str]] = {}
    for place in group.places:
        word, _space, step = place.partition(" ")
        by_word.setdefault(word, []).append(step)
    where = "; ".join(f"{word} {', '.join(steps)}" for word, steps in by_word.items() if word)
    return f"{group.step} {slip}{': ' if where else ''}{where}"


def _lines(reason: Reason) -> Iterator[str]:
    """What the steps share, and of which kinds they share nothing."""
    told = list(reason.telling)
    for each in told[:_TOLD]:
        step, other = each.steps
        if each.is_left:
            yield f"{each.thing}: left {each.now} after these steps, not {each.was}"
        elif each.differs:
            yield f"{each.thing}: {step} finds {each.now}, not {each.was}, because of {other}"
        else:
            yield f"{each.thing}: {step} finds {each.now} as before, although {other} changes it"
    if len(told) > _TOLD:
        yield f"and {len(told) - _TOLD} more"
    if reason.disjoint:
        yield f"nothing in common of: {', '.join(kind.value for kind in reason.disjoint)}"
    if reason.unchanged:
        yield f"needed by both, changed by neither: {', '.join(kind.value for kind in reason.unchanged)}"
