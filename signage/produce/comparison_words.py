"""A comparison in words, for the terminal and for the first pages of a review: sections of short lines."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from signage.check.grouping import group_problems
from signage.control.comparison.comparison import Comparison, LanguageChange
from signage.control.comparison.parts import PartChange
from signage.control.comparison.protocols import ProtocolChange
from signage.control.comparison.steps import Change, StepChange
from signage.control.comparison.values import ValueChange
from signage.control.comparison.words import TextChange
from signage.ground.counting import counted
from signage.ground.problem import Problem

_MOST_NAMED = 6
_FEWEST_ALIKE = 3
"""So many steps that differ in the same fields only are told together."""


@dataclass(frozen=True)
class Section:
    """A head with its lines; ``depth`` of a line is how far it stands in, from 0."""

    head: str
    lines: tuple[tuple[int, str], ...] = ()


def sections_of(comparison: Comparison) -> tuple[Section, ...]:
    """What changed, then what follows from it; no section where nothing differs."""
    if comparison.is_same:
        return ()
    return (
        *(_protocol(each) for each in sorted(comparison.protocols, key=_by_code)),
        *(_part(each) for each in comparison.parts),
        *_languages(comparison),
        *_codes(comparison),
        _findings(comparison),
        *_copies(comparison),
    )


def _by_code(change: ProtocolChange) -> tuple[int, str]:
    """P2 comes before P10."""
    return len(change.code), change.code


def _protocol(change: ProtocolChange) -> Section:
    named = f", was {change.was}" if change.was != change.protocol else ""
    lines = [*_values(change.values, 0), *_texts(change.texts, 0)]
    for steps in _alike(change.steps):
        lines += _steps(steps) if len(steps) >= _FEWEST_ALIKE else [x for each in steps for x in _step(each)]
    return Section(f"{change.code} {change.title}: {', '.join(change.changes)}{named}", tuple(lines))


def _alike(steps: Sequence[StepChange]) -> list[list[StepChange]]:
    """Steps in their order; those that differ in nothing but the same fields stand with the first of them."""
    groups: dict[object, list[StepChange]] = {}
    for step in steps:
        key: object = step.values if step.changes == (Change.CHANGED,) and not step.texts else step.step
        groups.setdefault(key, []).append(step)
    return list(groups.values())


def _steps(steps: Sequence[StepChange]) -> list[tuple[int, str]]:
    named = ", ".join(each.step for each in steps)
    return [(0, f"{len(steps)} steps changed alike: {named}"), *_values(steps[0].values, 1)]


def _step(change: StepChange) -> Iterator[tuple[int, str]]:
    yield 0, f"{step_words(change)}: {change.headline}"
    yield from _values(change.values, 1)
    yield from _texts(change.texts, 1)


def step_words(change: StepChange) -> str:
    """What became of a step, where it was and is, and what it was called."""
    places = dict.fromkeys(str(each) for each in (change.old, change.new) if each is not None)
    named = f", was {change.was}" if change.was != change.step else ""
    return f"step {change.step} {', '.join(change.changes)} ({' → '.join(places)}{named})"


def _values(values: Iterable[ValueChange], depth: int) -> Iterator[tuple[int, str]]:
    for each in values:
        old, new = ("none" if value is None else value for value in (each.old, each.new))
        yield depth, f"{each.path}: {old} became {new}"


def _texts(texts: Iterable[TextChange], depth: int) -> Iterator[tuple[int, str]]:
    """A text that came in one line, one that differs with its words; what went is told with its language."""
    for each in texts:
        what = f"{each.field} [{each.locale}]"
        if each.old is not None and each.new is not None:
            yield depth, f"{what}: {exchanges_of(each)}"
            yield depth + 1, f"was: {each.old}"
            yield depth + 1, f"now: {each.new}"
        elif each.new is not None:
            yield depth, f"{what} now: {each.new}"


def exchanges_of(change: TextChange) -> str:
    """The words that went and came, such as ``“both” became “all”; “slowly” added``.

    A word stands between them, for an arrow between two words that run to the left points the wrong way.
    """
    return "; ".join(_exchange(*pair) for pair in change.exchanges)


def _exchange(out: str, came: str) -> str:
    if not came:
        return f"“{out}” dropped"
    return f"“{out}” became “{came}”" if out else f"“{came}” added"


def _part(change: PartChange) -> Section:
    touched = f"touches {', '.join(change.protocols)}" if change.protocols else "no printed sheet differs"
    lines = (*_values(change.values, 0), *_texts(change.texts, 0))
    return Section(f"{change.kind} {change.id} {change.change}; {touched}", tuple(lines))


def _languages(comparison: Comparison) -> Iterator[Section]:
    for what, tags in (("added", comparison.added_locales), ("removed", comparison.removed_locales)):
        if tags:
            yield Section(f"Languages {what}: {', '.join(tags)}")
    if comparison.languages:
        lines = [line for each in comparison.languages for line in _language(each)]
        yield Section("Languages made doubtful", tuple(lines))


def _language(change: LanguageChange) -> Iterator[tuple[int, str]]:
    told = (
        f"{counted(len(change.doubtful), 'text')} doubtful" if change.doubtful else "",
        f"{counted(len(change.missing), 'text')} missing" if change.missing else "",
    )
    follows = "its sheets are refused until they are mended" if change.is_in_use else "in work"
    yield 0, f"{change.locale} {change.protocol}: {', '.join(filter(None, told))}; {follows}"
    yield 1, _some([*change.doubtful, *change.missing])


def _some(names: Sequence[str]) -> str:
    more = len(names) - _MOST_NAMED
    return f"{', '.join(names[:_MOST_NAMED])}{f' and {more} more' if more > 0 else ''}"


def _codes(comparison: Comparison) -> Iterator[Section]:
    by_code: dict[str, list[str]] = {}
    for code, tag in comparison.sheets:
        by_code.setdefault(code, []).append(tag)
    by_tags: dict[str, list[str]] = {}
    for code, tags in by_code.items():
        by_tags.setdefault(", ".join(tags), []).append(code)
    if by_tags:
        lines = tuple((0, f"{', '.join(codes)} in {tags}") for tags, codes in by_tags.items())
        yield Section("Sheets with another printed code, so that sign-offs of them end", lines)


def _findings(comparison: Comparison) -> Section:
    before, after = (
        ", ".join(f"{number} {severity}" for severity, number in counts)
        for counts in (comparison.counts_before, comparison.counts_after)
    )
    lines = [
        (depth, text)
        for what, problems in (("New", comparison.new_findings), ("Gone", comparison.gone_findings))
        for depth, text in _told(what, problems)
    ]
    head = f"Findings before: {before}; after: {after}"
    return Section(head, tuple(lines) or ((0, "None is new and none is gone."),))


def _told(what: str, problems: Sequence[Problem]) -> Iterator[tuple[int, str]]:
    grouped = group_problems(problems)
    for finding in grouped.findings:
        first = finding.first
        where = (first.locale, f"step {first.step}" if first.step else "", *finding.sheets[:1])
        told = f"{first.severity.value} {first.code} {finding.sentence}"
        among = " · ".join(filter(None, where))
        yield 0, f"{what}: {told}{f' [{among}]' if among else ''}"
        if first.place.path:
            yield 1, str(first.place)
    left = sum(sum(numbers.values()) for numbers in grouped.left_out.values())
    if left:
        yield 0, f"{what}: {counted(left, 'more is', 'more are')} not told here; '--format json' has each."


def _copies(comparison: Comparison) -> Iterator[Section]:
    if comparison.copies:
        lines = (
            (0, f"{each.copy.number} {each.copy.subject} {each.copy.sheet} [{each.copy.locale}] {each.spot}")
            for each in comparison.copies
        )
        yield Section(
            f"Copies on walls and with learners that this touches: {len(comparison.copies)}", tuple(lines)
        )
