"""What a sign-off binds: content, rules, and what each kind of sheet shows; and what has changed since."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from signage.drawing.marks import Group, Mark, Sheet, TextMark, walk
from signage.drawing.roles import GroupRole, TypeRole
from signage.ground.fingerprint import canonical_json, revision_code

CODE_LENGTH = 4
_WINDOWS = 12
"""Codes that a fingerprint can give: 256 bits are 52 signs of an alphabet of 30."""

_PLAIN = dict.fromkeys(map(ord, "\u2066\u2067\u2068\u2069\u00ad\u200b")) | dict.fromkeys(
    map(ord, "\u00a0\u202f"), " "
)
"""Isolates, soft hyphens and ties change with the width of a line."""

_OF_STEP = {
    TypeRole.HEADLINE: "text",
    TypeRole.STRIP: "text",
    TypeRole.ROW: "text",
    TypeRole.DETAIL: "detail",
    TypeRole.STRIP_DETAIL: "detail",
    TypeRole.WHY: "why",
    TypeRole.CAUTION: "caution",
    TypeRole.STRIP_CAUTION: "caution",
    TypeRole.CONDITION: "condition",
    TypeRole.STRIP_CONDITION: "condition",
    TypeRole.CONTAINER_NAME: "container",
    TypeRole.STRIP_CONTAINER_NAME: "container",
    TypeRole.STEP_TIME: "time",
    TypeRole.STRIP_STEP_TIME: "time",
    TypeRole.CRITICAL: "critical",
}
"""The texts of a step, whatever its size on the paper."""

_OF_SHEET = frozenset(
    {TypeRole.KEY_RULE, TypeRole.RULE, TypeRole.LOCAL_POLICY, TypeRole.MEMORY_AID, TypeRole.CAUTIONS}
)
"""Sentences that hold for a whole sheet."""


@dataclass(frozen=True)
class ShownStep:
    """A step as a sheet shows it: texts by what they are, and the names of its pictures."""

    id: str
    texts: tuple[tuple[str, str], ...] = ()
    pictures: tuple[str, ...] = ()


@dataclass(frozen=True)
class ShownOnSheet:
    """The steps of a sheet in reading order, and the sentences that hold for all of it."""

    steps: tuple[ShownStep, ...] = ()
    sentences: tuple[str, ...] = ()

    def as_json(self) -> dict[str, Any]:
        """Plain values, in an order that content alone decides."""
        return {
            "steps": [
                [each.id, [list(text) for text in each.texts], list(each.pictures)] for each in self.steps
            ],
            "sentences": list(self.sentences),
        }

    @classmethod
    def from_json(cls, value: Mapping[str, Any]) -> ShownOnSheet:
        """The value that ``as_json`` gave."""
        steps = (
            ShownStep(name, tuple((what, text) for what, text in texts), tuple(pictures))
            for name, texts, pictures in value["steps"]
        )
        return cls(tuple(steps), tuple(value["sentences"]))

    def both(self, other: ShownOnSheet) -> ShownOnSheet:
        """What this and the same sheet on another paper show."""
        there = {each.id: each for each in other.steps}
        steps = tuple(
            ShownStep(
                each.id,
                tuple(text for text in each.texts if text in there[each.id].texts),
                tuple(name for name in each.pictures if name in there[each.id].pictures),
            )
            for each in self.steps
            if each.id in there
        )
        return ShownOnSheet(steps, tuple(each for each in self.sentences if each in other.sentences))


def shown_on(sheet: Sheet) -> ShownOnSheet:
    """What a composed sheet shows its reader, whatever paper it is on and however its lines break."""
    steps: dict[str, ShownStep] = {}
    sentences: set[str] = set()
    for page in sheet.pages:
        for mark, _ in page.placed:
            if isinstance(mark, Group) and mark.role is GroupRole.STEP:
                steps[mark.name] = _merged(steps.get(mark.name, ShownStep(mark.name)), mark)
            elif isinstance(mark, TextMark) and mark.role in _OF_SHEET:
                sentences.add(plain_text(mark.text))
    return ShownOnSheet(tuple(steps.values()), tuple(sorted(sentences)))


def _merged(step: ShownStep, group: Group) -> ShownStep:
    """A step that is drawn in several groups, as cards that are cut and checklists on panels are."""
    texts, pictures = set(step.texts), set(step.pictures)
    for mark in _marks_of(group):
        if isinstance(mark, TextMark) and mark.role in _OF_STEP:
            texts.add((_OF_STEP[mark.role], plain_text(mark.text)))
        elif isinstance(mark, Group) and mark.role is GroupRole.PICTURE and mark.name:
            pictures.add(mark.name)
    return ShownStep(step.id, tuple(sorted(texts)), tuple(sorted(pictures)))


def _marks_of(group: Group) -> Iterator[Mark]:
    return (mark for mark, _ in walk(group.marks))


def plain_text(text: str) -> str:
    """The words of a text without what a line break or a direction put into it."""
    return " ".join(text.translate(_PLAIN).split())


def losses(signed: ShownOnSheet, now: ShownOnSheet) -> Iterator[str]:
    """What was shown when it was signed and is shown no longer, in sentences.

    A text counts as shown where an earlier step of the sheet with the same headline shows it: posters tell
    a repeated detail once.
    """
    before, after = [each.id for each in signed.steps], [each.id for each in now.steps]
    if [name for name in after if name in set(before)] != [name for name in before if name in set(after)]:
        yield "its steps stand in another order"
    there: dict[str, set[tuple[str, str]]] = {}
    told: dict[str, set[tuple[str, str]]] = {}
    pictures = {each.id: each.pictures for each in now.steps}
    for step in now.steps:
        headline = next((text for what, text in step.texts if what == "text"), "")
        told[headline] = told.get(headline, set()) | set(step.texts)
        there[step.id] = set(told[headline])
    for step in signed.steps:
        if step.id not in there:
            yield f"step {step.id} is gone"
            continue
        for what, text in step.texts:
            if (what, text) not in there[step.id]:
                yield f"the {what} of step {step.id} is gone: '{text}'"
        for name in step.pictures:
            if name not in pictures[step.id]:
                yield f"the picture {name} of step {step.id} is gone"
    for sentence in signed.sentences:
        if sentence not in now.sentences:
            yield f"a sentence is gone: '{sentence}'"


@dataclass(frozen=True)
class Binding:
    """All that a sign-off binds.

    ``content`` is what readers see or act on, ``more`` the fixed words that only a signed sheet carries,
    ``rules`` the severity of every rule that stands against approval, ``sheets`` by kind and part what each
    shows.
    """

    subject: str
    locale: str | None
    content: Mapping[str, Any]
    rules: Mapping[str, str]
    sheets: Mapping[str, ShownOnSheet]
    more: Mapping[str, Any] = field(default_factory=dict)

    def as_json(self) -> dict[str, Any]:
        """Plain values, of which the canonical form is kept and hashed."""
        return {
            "subject": self.subject,
            "locale": self.locale,
            "content": self.content,
            "more": self.more,
            "rules": dict(self.rules),
            "sheets": {name: shown.as_json() for name, shown in self.sheets.items()},
        }

    def data(self) -> bytes:
        """The bytes that are kept beside the records."""
        return canonical_json(self.as_json()) + b"\n"

    @property
    def hash(self) -> str:
        """SHA-256 of the bytes: what a record binds, and the name of the file."""
        return hashlib.sha256(self.data()).hexdigest()

    @property
    def content_hash(self) -> str:
        """SHA-256 of the content alone, of which a printed code is the short form."""
        return hashlib.sha256(canonical_json(self.content)).hexdigest()

    @classmethod
    def from_json(cls, value: Mapping[str, Any]) -> Binding:
        """The value that ``as_json`` gave."""
        sheets = {name: ShownOnSheet.from_json(each) for name, each in value["sheets"].items()}
        return cls(value["subject"], value["locale"], value["content"], value["rules"], sheets, value["more"])


def free_code(content_hash: str, taken: Mapping[str, str]) -> str:
    """The printed code of a content: its first four signs, or the next four that stand for nothing else.

    ``taken`` is the content that each code already stands for on paper.
    """
    signs = revision_code(content_hash, CODE_LENGTH * _WINDOWS)
    windows = (signs[start : start + CODE_LENGTH] for start in range(0, len(signs), CODE_LENGTH))
    for code in windows:
        if taken.get(code, content_hash) == content_hash:
            return code
    raise ValueError(f"every code of {content_hash} is taken")  # one in 10^70


def changes_of_rules(signed: Mapping[str, str], now: Mapping[str, str]) -> Iterator[str]:
    """The rules that are new or graver than those that held when it was signed."""
    changed = [code for code, severity in now.items() if signed.get(code) != severity]
    if changed:
        yield f"the rules have changed since ({', '.join(sorted(changed)[:5])})"


def changes_of_content(signed: Mapping[str, Any], now: Mapping[str, Any]) -> Iterator[str]:
    """What differs between two contents, in a few words each: of steps by their ids, of the rest by key."""
    for key in sorted({*signed, *now}):
        before, after = signed.get(key), now.get(key)
        if before == after:
            continue
        if key == "protocol" and isinstance(before, Mapping) and isinstance(after, Mapping):
            yield from _changes_of_protocol(before, after)
        elif isinstance(before, Mapping) and isinstance(after, Mapping):
            names = [name for name in sorted({*before, *after}) if before.get(name) != after.get(name)]
            yield f"{key}: {_some(names)} changed"
        else:
            yield f"{key} changed"


def _changes_of_protocol(before: Mapping[str, Any], after: Mapping[str, Any]) -> Iterator[str]:
    old, new = dict(_steps(before)), dict(_steps(after))
    for told, names in (
        ("added", [name for name in new if name not in old]),
        ("removed", [name for name in old if name not in new]),
        ("changed", [name for name in new if name in old and new[name] != old[name]]),
    ):
        if names:
            yield f"{'step' if len(names) == 1 else 'steps'} {_some(names)} {told}"
    kept = [name for name in new if name in old]
    if kept != [name for name in old if name in new]:
        yield "the order of the steps changed"
    rest = [key for key in sorted({*before, *after}) if key != "phases" and before.get(key) != after.get(key)]
    if rest:
        yield f"{_some(rest)} changed"
    if not rest and old == new and list(old) == list(new):
        yield "a phase changed"


def _steps(protocol: Mapping[str, Any]) -> Iterator[tuple[str, Any]]:
    for phase in protocol.get("phases", ()):
        for step in phase.get("steps", ()):
            yield step["id"], step


def _some(names: Sequence[str], most: int = 4) -> str:
    more = len(names) - most
    return f"{', '.join(names[:most])}{f' and {more} more' if more > 0 else ''}"


def common(sheets: Iterable[tuple[str, ShownOnSheet]]) -> dict[str, ShownOnSheet]:
    """By kind and part what a sheet shows on every paper that it was composed on."""
    found: dict[str, ShownOnSheet] = {}
    for name, shown in sheets:
        found[name] = found[name].both(shown) if name in found else shown
    return found
