"""Two states of a library compared: what changed, and what follows for findings, languages and walls."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from signage.control.comparison.edition import Edition
from signage.control.comparison.parts import PartChange, compare_parts
from signage.control.comparison.protocols import ProtocolChange, compare_protocols, protocol_pairs
from signage.control.recall import place_in, walking_order
from signage.ground.problem import Problem, Severity
from signage.model.copies import CopyState


@dataclass(frozen=True)
class LanguageChange:
    """Texts of a protocol that a language could print before, or that are new, and that it cannot print now.

    ``doubtful`` are translated from another source text, ``missing`` not at all. ``is_in_use`` says whether
    sheets are printed in it, so that they are refused now.
    """

    locale: str
    protocol: str
    doubtful: tuple[str, ...]
    missing: tuple[str, ...]
    is_in_use: bool

    def as_json(self) -> dict[str, object]:
        """The fields of the contract."""
        return {
            "locale": self.locale,
            "protocol": self.protocol,
            "doubtful": list(self.doubtful),
            "missing": list(self.missing),
            "in_use": self.is_in_use,
        }


@dataclass(frozen=True)
class Comparison:
    """All that differs. ``sheets`` are the protocols and languages whose printed codes are others now.

    ``new`` and ``gone`` are findings; ``copies`` hang or are with learners and show what is no longer so,
    in walking order.
    """

    old: str
    new: str
    protocols: tuple[ProtocolChange, ...] = ()
    parts: tuple[PartChange, ...] = ()
    added_locales: tuple[str, ...] = ()
    removed_locales: tuple[str, ...] = ()
    languages: tuple[LanguageChange, ...] = ()
    sheets: tuple[tuple[str, str], ...] = ()
    new_findings: tuple[Problem, ...] = ()
    gone_findings: tuple[Problem, ...] = ()
    counts_before: tuple[tuple[str, int], ...] = ()
    counts_after: tuple[tuple[str, int], ...] = ()
    copies: tuple[CopyState, ...] = ()

    @property
    def is_same(self) -> bool:
        """Whether nothing differs that a reader, a rule or a reviewer could see."""
        return not (
            self.protocols
            or self.parts
            or self.added_locales
            or self.removed_locales
            or self.sheets
            or self.new_findings
            or self.gone_findings
        )

    def as_json(self) -> dict[str, object]:
        """The JSON of ``compare``."""
        return {
            "old": self.old,
            "new": self.new,
            "protocols": {each.code: each.as_json() for each in self.protocols},
            "parts": [each.as_json() for each in self.parts],
            "locales": {
                "added": list(self.added_locales),
                "removed": list(self.removed_locales),
                "doubtful": [each.as_json() for each in self.languages],
            },
            "sheets": [{"protocol": code, "locale": tag} for code, tag in self.sheets],
            "findings": {
                "before": dict(self.counts_before),
                "after": dict(self.counts_after),
                "new": [each.as_json() for each in self.new_findings],
                "gone": [each.as_json() for each in self.gone_findings],
            },
            "copies": [
                {
                    "number": state.copy.number,
                    "sheet": state.copy.sheet,
                    "protocol": state.copy.subject,
                    "locale": state.copy.locale,
                    "revision": state.copy.code,
                    "spot": str(state.spot) or None,
                }
                for state in self.copies
            ],
        }


def compare(old: Edition, new: Edition, states: Iterable[CopyState] = ()) -> Comparison:
    """What differs between two editions; ``states`` are the copies of the register, if there is one."""
    before, after = _in_use(old.findings), _in_use(new.findings)
    return Comparison(
        old.name,
        new.name,
        compare_protocols(old, new),
        compare_parts(old, new),
        tuple(tag for tag in new.library.locales if tag not in old.library.locales),
        tuple(tag for tag in old.library.locales if tag not in new.library.locales),
        tuple(_languages(old, new)),
        _codes(new, changed_sheets(old, new)),
        _beyond(after, before),
        _beyond(before, after),
        _counts(before),
        _counts(after),
        _outdated(old, new, states),
    )


def changed_sheets(old: Edition, new: Edition) -> tuple[tuple[str, str], ...]:
    """The ids of protocols, and the languages, that both have and whose content differs."""
    return tuple(key for key, value in new.hashes.items() if key in old.hashes and old.hashes[key] != value)


def _codes(new: Edition, keys: Sequence[tuple[str, str]]) -> tuple[tuple[str, str], ...]:
    return tuple((new.library.protocols[name].code, tag) for name, tag in keys)


def _in_use(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Findings of languages in work are progress, told as gaps."""
    return tuple(problem for problem in problems if not problem.is_in_work)


def _beyond(problems: Sequence[Problem], others: Sequence[Problem]) -> tuple[Problem, ...]:
    """The findings that the others lack; one that stands on another line of its file is the same."""
    left = Counter(map(_identity, others))
    found: list[Problem] = []
    for problem in problems:
        key = _identity(problem)
        if left[key]:
            left[key] -= 1
        else:
            found.append(problem)
    return tuple(found)


def _identity(problem: Problem) -> tuple[str | None, ...]:
    return (
        problem.code,
        problem.message,
        problem.protocol,
        problem.step,
        problem.locale,
        problem.sheet,
        problem.text,
    )


def _counts(problems: Iterable[Problem]) -> tuple[tuple[str, int], ...]:
    counted = Counter(problem.severity for problem in problems)
    return tuple((severity.value, counted[severity]) for severity in Severity)


def _languages(old: Edition, new: Edition) -> Iterator[LanguageChange]:
    """Gaps that were none, by protocol and language; a language that came is no change of one."""
    pairs = protocol_pairs(old, new)
    for tag in new.words:
        if tag not in old.words:
            continue
        for name, protocol in new.library.protocols.items():
            if name not in pairs:
                continue
            missing = new.missing.get(tag, frozenset())
            gaps = [
                context
                for context, text in new.words[tag].items()
                if text is None
                and context in new.contexts.get(name, frozenset())
                and not _was_gap(old, tag, context)
            ]
            if gaps:
                locale = new.library.locales.get(tag)
                yield LanguageChange(
                    tag,
                    protocol.code,
                    tuple(context for context in gaps if context not in missing),
                    tuple(context for context in gaps if context in missing),
                    locale is None or locale.is_in_use_for(name),
                )


def _was_gap(old: Edition, tag: str, context: str) -> bool:
    return context in old.words[tag] and old.words[tag][context] is None


def _outdated(old: Edition, new: Edition, states: Iterable[CopyState]) -> tuple[CopyState, ...]:
    """Copies that are out, of sheets whose content is another now or that are no longer there."""
    changed = {key for key, value in old.hashes.items() if new.hashes.get(key) != value}
    order = walking_order(new.library)
    found = [
        state
        for state in states
        if state.is_out
        and (state.copy.subject, state.copy.locale) in changed
        and state.copy.hash != new.hashes.get((state.copy.subject, state.copy.locale))
    ]
    return tuple(sorted(found, key=lambda state: place_in(order, state)))
