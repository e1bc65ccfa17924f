"""What protocols share: kit, policy, wards, pictures, glossary and fixed words, and whom a change touches."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from signage.control.comparison.edition import Edition
from signage.control.comparison.steps import Change
from signage.control.comparison.values import ValueChange, value_changes
from signage.control.comparison.words import TextChange, text_changes

_FIXED = "interface/"


@dataclass(frozen=True)
class PartChange:
    """A shared part that came, went or changed. ``protocols`` are the codes of those whose sheets it alters.

    ``kind`` is kit, policy, ward, picture, term, locale, library or words.
    """

    kind: str
    id: str
    change: Change
    values: tuple[ValueChange, ...] = ()
    texts: tuple[TextChange, ...] = ()
    protocols: tuple[str, ...] = ()

    def as_json(self) -> dict[str, object]:
        """The fields of the contract."""
        return {
            "kind": self.kind,
            "id": self.id,
            "change": self.change.value,
            "fields": [each.as_json() for each in self.values],
            "texts": [each.as_json() for each in self.texts],
            "protocols": list(self.protocols),
        }


def compare_parts(old: Edition, new: Edition) -> tuple[PartChange, ...]:
    """The shared parts that differ, kind by kind."""
    there, here = old.library, new.library
    return (
        *_of_kind(old, new, "kit", there.garments, here.garments, "kit/{}/name"),
        *_of_kind(old, new, "policy", there.policy, here.policy),
        *_wards(old, new),
        *_pictures(old, new),
        *_of_kind(
            old, new, "term", {each.id: each for each in there.terms}, {each.id: each for each in here.terms}
        ),
        *_of_kind(old, new, "locale", there.locales, here.locales),
        *_library(old, new),
        *_fixed_words(old, new),
    )


def _of_kind(
    old: Edition,
    new: Edition,
    kind: str,
    there: Mapping[str, Any],
    here: Mapping[str, Any],
    context: str = "",
) -> Iterator[PartChange]:
    """Parts by their ids; ``context`` is where the name of one stands among the texts."""
    for name in dict.fromkeys((*there, *here)):
        before, after = there.get(name), here.get(name)
        is_both = before is not None and after is not None
        values = value_changes(before, after, without=("id", *(("name",) if context else ())))
        where = context.format(name)
        texts = text_changes(old, new, [("name", where, where)]) if context and is_both else ()
        if values or texts or not is_both:
            change = _change(before, after)
            told = values if is_both else ()
            yield PartChange(kind, name, change, told, texts, _touched(old, new, _READS[kind](name)))


def _change(before: object, after: object) -> Change:
    if before is None:
        return Change.ADDED
    return Change.REMOVED if after is None else Change.CHANGED


def _wards(old: Edition, new: Edition) -> Iterator[PartChange]:
    """Wards with all their texts; a printer or a wall slot is told, and alters no sheet."""
    there, here = old.library.wards, new.library.wards
    for name in dict.fromkeys((*there, *here)):
        before, after = there.get(name), here.get(name)
        values = value_changes(before, after, without=("id", "name")) if before and after else ()
        contexts = _contexts_under(old, new, f"ward/{name}/") if before and after else []
        texts = text_changes(old, new, contexts)
        shown = {each.path for each in values if not _is_in_texts(each.path)}
        told = tuple(each for each in values if each.path in shown)
        if told or texts or before is None or after is None:
            yield PartChange("ward", name, _change(before, after), told, texts, _touched(old, new, _ward))


def _is_in_texts(path: str) -> bool:
    """Whether the field is the name of a zone or a fixture, which is told as a text."""
    return path.split(" ", 1)[0] in {"zones", "fixtures"} and path.endswith(" name")


def _pictures(old: Edition, new: Edition) -> Iterator[PartChange]:
    """Drawings whose scene differs, and their words; those that a step took up or gave up are told there."""
    both = [name for name in new.pictures if name in old.pictures]
    for name in both:
        where = f"picture/{name}"
        texts = text_changes(old, new, [("read aloud", where, where)])
        if texts or old.pictures[name] != new.pictures[name]:
            touched = _touched(old, new, _READS["picture"](name))
            if texts and not touched:
                touched = _users_of(new, name)
            yield PartChange("picture", name, Change.CHANGED, (), texts, touched)


def _users_of(edition: Edition, picture: str) -> tuple[str, ...]:
    return tuple(
        protocol.code
        for protocol in edition.library.protocols.values()
        if any(step.picture == picture for step in protocol.steps)
    )


def _library(old: Edition, new: Edition) -> Iterator[PartChange]:
    without = (
        *("name", "locales", "garments", "policy", "terms", "wards", "protocols", "scene_files"),
        *("waivers", "people", "vocabulary"),
    )
    values = value_changes(old.library, new.library, without)
    texts = text_changes(old, new, [("name", "library/name", "library/name")])
    touched = _touched(old, new, lambda content: (content.get("hospital"), content.get("source")))
    if values or texts:
        yield PartChange("library", "library.yaml", Change.CHANGED, values, texts, touched)
    for kind in ("waivers", "people"):
        named = [_by_name(getattr(each.library, kind)) for each in (old, new)]
        found = value_changes(*named)
        if found:
            yield PartChange("library", f"{kind}.yaml", Change.CHANGED, found)


def _by_name(values: Any) -> Any:
    """Waivers by what they excuse, since they have no id."""
    if isinstance(values, Mapping):
        return values
    return {" ".join(filter(None, (each.code, each.protocol, each.step))): each for each in values}


def _fixed_words(old: Edition, new: Edition) -> Iterator[PartChange]:
    """The words that the programme prints, by language; sheets of every protocol show them."""
    contexts = _contexts_under(old, new, _FIXED)
    by_tag: dict[str, list[TextChange]] = {}
    for each in text_changes(old, new, contexts):
        by_tag.setdefault(each.locale, []).append(each)
    codes = tuple(protocol.code for protocol in new.library.protocols.values())
    for tag, texts in by_tag.items():
        yield PartChange("words", tag, Change.CHANGED, (), tuple(texts), codes)


def _contexts_under(old: Edition, new: Edition, start: str) -> list[tuple[str, str, str]]:
    found = dict.fromkeys(
        context for each in (old, new) for texts in each.words.values() for context in texts
    )
    return [
        (context.removeprefix(start).replace("/", " "), context, context)
        for context in found
        if context.startswith(start)
    ]


_Reader = Callable[[Mapping[str, Any]], Any]

_READS: Mapping[str, Callable[[str], _Reader]] = {
    "kit": lambda name: lambda content: content.get("kit", {}).get(name),
    "policy": lambda name: lambda content: content.get("policy", {}).get(name),
    "picture": lambda name: lambda content: content.get("pictures", {}).get(name),
    "term": lambda _name: lambda _content: None,
    "locale": lambda _name: lambda _content: None,
}
"""What of the content that a printed code stands for is a part of each kind."""


def _ward(content: Mapping[str, Any]) -> Any:
    return content.get("ward")


def _touched(old: Edition, new: Edition, read: _Reader) -> tuple[str, ...]:
    """The codes of the protocols, there before and after, of whose content the part is another one."""
    return tuple(
        protocol.code
        for name, protocol in new.library.protocols.items()
        if name in old.contents
        and name in new.contents
        and read(old.contents[name]) != read(new.contents[name])
    )
