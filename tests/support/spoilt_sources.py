"""Errors that authors make in source texts, one function a class, beside those they share with translators.

A function returns the spoilt text, or None where the class does not apply. ``Source.step`` is the step of the
text as the demo has it; what it does is what the text is held against.
"""

import random
import re
from collections.abc import Callable, Collection
from dataclasses import dataclass

from spoilt_words import SHARED, Text

from signage.model.library import Step

NAMES = ("outer gloves", "boot covers", "hood", "goggles", "coverall", "apron", "respirator", "inner gloves")
ZONES = {"corridor": "room", "room": "corridor", "dirty side": "clean side", "clean side": "dirty side"}
DENIALS = [
    (r"\baway from\b", "near"),
    (r"\baway\b", "here"),
    (r"\boff the (face|chair)\b", r"on the \1"),
    (r"\bnobody\b", "somebody"),
    (r"\b[Dd]o not (\w)", lambda match: match.group(1).upper()),
    (r"\bnever\b", "always"),
    (r"\b[Nn]o (\w)", r"\1"),
    (r"\bnot ", ""),
]
"""Whole denials of the demo's steps, and what is left without them."""


@dataclass(frozen=True)
class Source(Text):
    """A source text with its step."""

    step: Step | None = None
    protocol: str = ""


Spoil = Callable[[Source, random.Random], str | None]


def _headline_of_13_words(text: Source, _rng: random.Random) -> str | None:
    words = f"{text.text} and then look at it once more to see that all of it is right".split()
    return " ".join(words[:13]) if text.role == "headline" else None


def _other_item(text: Source, _rng: random.Random) -> str | None:
    """The name of another piece, where the step puts on, takes off or cleans the one named."""
    if text.role != "headline" or text.step is None:
        return None
    if not {action.verb for action in text.step.actions} & {"don", "doff", "hygiene"}:
        return None
    for name in (*NAMES, "gloves"):
        if name in text.text:
            return text.text.replace(name, next(n for n in NAMES if n[-5:] != name[-5:]))
    return None


def _other_zone(text: Source, _rng: random.Random) -> str | None:
    """Not after "out of": the way out of a place and out to it are told apart by readers only."""
    is_way = text.step is not None and any(action.verb == "move" for action in text.step.actions)
    if text.role != "headline" or not is_way:
        return None
    for name, other in ZONES.items():
        if name in text.text and "out of" not in text.text:
            return text.text.replace(name, other)
    return None


def _gloves_for_hands(text: Source, _rng: random.Random) -> str | None:
    if text.role != "headline" or text.step is None or text.step.action.verb != "hygiene":
        return None
    for name, other in (
        ("inner gloves", "both hands"),
        ("outer gloves", "both hands"),
        ("both hands", "outer gloves"),
    ):
        if name in text.text:
            return text.text.replace(name, other)
    return None


def _title_turned(text: Source, _rng: random.Random) -> str | None:
    turned = {"Put on": "Take off", "Take off": "Put on"}
    return turned.get(text.text) if "/phase/" in text.context and text.role == "title" else None


def _without_value(text: Source, _rng: random.Random) -> str | None:
    has_bin = text.step is not None and any(action.bin is not None for action in text.step.actions)
    return None if has_bin else f"{text.text} {{bin}}"


def _denial_lost(text: Source, _rng: random.Random) -> str | None:
    """In all texts of a step with the mark; of one without it, nobody knows that it denied something."""
    if text.step is None or not text.step.negation or text.role == "why":
        return None
    spoilt = text.text
    for pattern, left in DENIALS:
        spoilt = re.sub(pattern, left, spoilt)
    return spoilt


def _forbids_unmarked(text: Source, _rng: random.Random) -> str | None:
    is_unmarked = text.step is not None and not text.step.negation
    return "Do not touch the front." if is_unmarked and text.role == "caution" else None


def _detail_for_headline(text: Source, _rng: random.Random) -> str | None:
    return text.step.detail if text.role == "headline" and text.step is not None else None


def _too_long(text: Source, _rng: random.Random) -> str:
    return " ".join([text.text] * (1 + 620 // len(text.text)))


ACTS = frozenset({"don", "doff", "fasten", "unfasten", "move", "sit", "stand"})
"""Verbs of steps that can be turned round; of a step that only says something, nobody knows what it does."""


def _where(verbs: Collection[str], spoil: Spoil) -> Spoil:
    def spoil_some(text: Source, rng: random.Random) -> str | None:
        does = text.step is not None and any(action.verb in verbs for action in text.step.actions)
        return spoil(text, rng) if does else None

    return spoil_some


CLEANED_WHEN_READ = frozenset({"line break", "space before", "space after", "doubled space"})
"""Spaces and line breaks of YAML are set right by the reader, so that these are no errors of authors."""

OF_AUTHORS: dict[str, Spoil] = {
    **{name: spoil for name, spoil in SHARED.items() if name not in CLEANED_WHEN_READ},
    "act turned round": _where(ACTS, SHARED["act turned round"]),
    "other hand layer": _where({"don", "doff", "hygiene"}, SHARED["other hand layer"]),
    "left empty": lambda _text, _rng: "",
    "headline of 13 words": _headline_of_13_words,
    "other item named": _other_item,
    "other zone named": _other_zone,
    "gloves for hands": _gloves_for_hands,
    "title turned round": _title_turned,
    "placeholder without value": _without_value,
    "placeholder unknown": lambda text, _rng: f"{text.text} {{tme}}",
    "denial lost": _denial_lost,
    "forbids, unmarked": _forbids_unmarked,
    "detail in the place of the headline": _detail_for_headline,
    "far too long": _too_long,
}


def _of_same_role(text: Source, rng: random.Random) -> str | None:
    others = [each for each in text.others if each != text.text]
    return rng.choice(others) if text.role in {"detail", "why", "caution"} and others else None


READER_ONLY: dict[str, Spoil] = {"detail, why or caution of another step": _of_same_role}
"""Counted, not promised."""
