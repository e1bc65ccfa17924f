"""Errors that translators and authors make, one function a class: what each does to a text.

A function returns the spoilt text, or None where the class does not apply. The words are the tests' own, not
those of the glossary. Classes of ``READER_ONLY`` change what a text says with words that the language has:
only somebody who reads it can see them.
"""

from __future__ import annotations

import random
import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass


@dataclass(frozen=True)
class Text:
    """A text to spoil: its source, what it is, and the texts beside it."""

    context: str
    source: str
    text: str
    role: str
    tag: str
    others: tuple[str, ...] = ()
    """Texts of the same role in the same language."""


Spoil = Callable[[Text, random.Random], str | None]

TURNED = {
    "en": [("Put on", "Take off"), ("Open", "Close"), ("Go into", "Go out of"), ("Sit", "Stand up")],
    "fr": [("Mettre", "Retirer"), ("Enfiler", "Retirer"), ("Ouvrir", "Fermer"), ("Entrer", "Sortir")],
    "ar": [("البس", "اخلع"), ("افتح", "أغلق"), ("ادخل", "اخرج"), ("اجلس", "انهض")],
    "hi": [("पहनें", "उतारें"), ("खोलें", "बंद करें"), ("में जाएँ", "से निकलें"), ("बैठें", "खड़े हों")],
    "am": [("ያድርጉ", "ያውልቁ"), ("ይልበሱ", "ያውልቁ"), ("ይክፈቱ", "ይዝጉ"), ("ይግቡ", "ይውጡ")],
}  # fmt: skip
"""Acts and their opposites, as headlines say them."""

LAYERS = {
    "en": [("inner", "outer")],
    "fr": [("internes", "externes")],
    "ar": [("الداخلي", "الخارجي")],
    "hi": [("भीतरी", "बाहरी")],
    "am": [("የውስጥ", "የውጭ")],
}
RUBBED = {
    "en": [("Rub", "Wash")],
    "fr": [("Frotter", "Laver")],
    "ar": [("افرك", "اغسل")],
    "hi": [("रगड़ें", "धोएँ")],
    "am": [("ይሹ", "ይታጠቡ")],
}
NEGATIONS = {
    "fr": [
        (r"\bN(?:e |’)(?:pas |plus |jamais |rien )", ""),
        (r"\bn(?:e |’)(\S+(?: \S+)?) (?:pas|plus|jamais|rien|personne)\b", r"\1"),
        (r"\bne (?:pas|plus|jamais|rien) ", ""),
        (r"\b([Ss])ans ", "avec "),
    ],
    "ar": [
        (r"\bلا (?=[تي])([^.؟]*?) ولا (?=عن)", r"\1 وعن "),
        (r"\bلا (?=[تي])", ""),
        (r"\b(?:دون|بلا) ", "مع "),
    ],
    "hi": [(r" न (?=\S)", " "), (r" नहीं", ""), (r"\bबिना (\S+)", r"\1 के साथ")],
    "am": [(r"\bአይ", "ይ"), (r"\bአት", "ት"), (r"\bሳይ", "እየ")],
}
"""Whole negations, as patterns, and what is left of the sentence without them."""

_NEGATED_SOURCE = re.compile(
    r"\b(?:no|not|never|without|nothing|nobody|none|cannot|neither|nor)\b|n’t\b", re.IGNORECASE
)

ONLY = {
    "en": [("Only ", ""), ("only ", ""), (" only", "")],
    "fr": [("seulement ", ""), (" seulement", ""), ("Seulement ", "")],
    "ar": [(" فقط", "")],
    "hi": [("केवल ", ""), ("सिर्फ़ ", "")],
    "am": [(" ብቻ", "")],
}
_RESTRICTED_SOURCE = re.compile(r"\b(?:only|alone|nothing but)\b", re.IGNORECASE)
BINS = {"en": "bin", "fr": "bac", "ar": "(?:في )?السلة", "hi": "डिब्बे", "am": "መጣያው?"}
"""Words for a waste bin, as headlines and details say them."""

_STILL_ONLY = {"hi": re.compile(r"(?<!\S)(?:वही|यही|इसी|उसी)(?!\S)")}
"""Words that say "this very one", so that a text without the other word still says it."""

TIME_IN_WORDS = {
    "en": "two minutes", "fr": "deux minutes", "ar": "دقيقتين", "hi": "दो मिनट", "am": "ሁለት ደቂቃ",
}  # fmt: skip
OTHER_SCRIPT = {"en": "перчатки", "fr": "перчатки", "ar": "gloves", "hi": "gloves", "am": "gloves"}
LOOK_ALIKE = {"a": "а", "e": "е", "o": "о", "p": "р", "c": "с"}
"""Latin letters and the Cyrillic ones that look the same (Unicode, confusables)."""

OTHER_LANGUAGE = {
    "fr": "Die Hände mit der Lösung gründlich einreiben und trocknen lassen.",
    "ar": "دست‌ها را خوب بشویید و خشک کنید.",
    "hi": "দুই হাত ভালো করে ঘষুন এবং শুকাতে দিন।",
    "am": "Harka kee lamaan sirriitti rigi, hamma goguttis eegi.",
    "en": "Die Hände mit der Lösung gründlich einreiben und trocknen lassen.",
}


def _swap(table: dict[str, list[tuple[str, str]]], *, both_ways: bool = True) -> Spoil:
    def spoil(text: Text, _rng: random.Random) -> str | None:
        for one, other in table[text.tag]:
            for old, new in ((one, other), (other, one)) if both_ways else ((one, other),):
                if old and old in text.text:
                    return text.text.replace(old, new, 1)
        return None

    return spoil


def _only_headlines(spoil: Spoil) -> Spoil:
    return lambda text, rng: spoil(text, rng) if text.role == "headline" else None


def _inside_a_word(sign: str) -> Spoil:
    """In the middle of the longest word, where no placeholder stands."""

    def spoil(text: Text, _rng: random.Random) -> str | None:
        words = re.findall(r"[^\W\d_]{4,}", re.sub(r"\{\w+\}", " ", text.text))
        if not words:
            return None
        word = max(words, key=len)
        half = len(word) // 2
        return text.text.replace(word, f"{word[:half]}{sign}{word[half:]}", 1)

    return spoil


def _at_random_space(insert: str) -> Spoil:
    def spoil(text: Text, rng: random.Random) -> str | None:
        places = [match.start() for match in re.finditer(" ", text.text)]
        if not places:
            return None
        place = rng.choice(places)
        return f"{text.text[:place]}{insert}{text.text[place:]}"

    return spoil


def _mojibake(text: Text, _rng: random.Random) -> str | None:
    """UTF-8 read as Windows-1252; its five unused bytes are kept as they are, as browsers do (WHATWG)."""
    if text.text.isascii():
        return None
    return "".join(_read_as_windows(byte) for byte in text.text.encode("utf-8"))


def _read_as_windows(byte: int) -> str:
    try:
        return bytes([byte]).decode("cp1252")
    except UnicodeDecodeError:
        return chr(byte)


def _negation_dropped(text: Text, _rng: random.Random) -> str | None:
    if text.tag not in NEGATIONS or not _NEGATED_SOURCE.search(text.source):
        return None
    for pattern, left in NEGATIONS[text.tag]:
        spoilt = re.sub(pattern, left, text.text, count=1)
        if spoilt != text.text:
            return spoilt
    return None


def _only_dropped(text: Text, rng: random.Random) -> str | None:
    spoilt = _swap(ONLY, both_ways=False)(text, rng)
    if spoilt is None or not _RESTRICTED_SOURCE.search(text.source):
        return None
    still = _STILL_ONLY.get(text.tag)
    return None if still is not None and still.search(spoilt) else spoilt


def _turned_round(text: Text, rng: random.Random) -> str | None:
    """Only where the source names the act: 'mettre' is said of a bag in a bin as well."""
    acts = [act for pair in TURNED["en"] for act in pair]
    return _swap(TURNED)(text, rng) if any(act.lower() in text.source.lower() for act in acts) else None


def _question_marks(text: Text, _rng: random.Random) -> str | None:
    words = re.findall(r"[^\W\d_]{3,}", re.sub(r"\{\w+\}", " ", text.text))
    return text.text.replace(words[-1], "?" * len(words[-1]), 1) if words else None


def _look_alike(text: Text, _rng: random.Random) -> str | None:
    for latin, other in LOOK_ALIKE.items():
        match = re.search(
            rf"(?<=[a-z]){latin}(?=[a-z])", re.sub(r"\{\w+\}", lambda m: "-" * len(m[0]), text.text)
        )
        if match:
            return f"{text.text[: match.start()]}{other}{text.text[match.end() :]}"
    return None


def _other_script_word(text: Text, _rng: random.Random) -> str | None:
    words = re.findall(r"[^\W\d_]{3,}", re.sub(r"\{\w+\}", " ", text.text))
    return text.text.replace(words[-1], OTHER_SCRIPT[text.tag], 1) if len(words) > 1 else None


def _stray_mark(text: Text, _rng: random.Random) -> str | None:
    mark = {"ar": "\u064e", "hi": "\u093f", "am": "\u135f"}.get(text.tag, "\u0301")
    return f"{mark}{text.text}" if text.text[0] != "{" else None


def _presentation_form(text: Text, _rng: random.Random) -> str | None:
    return text.text.replace("لا", "\ufefb", 1) if "لا" in text.text else None


def _decomposed(text: Text, _rng: random.Random) -> str | None:
    spoilt = unicodedata.normalize("NFD", text.text)
    return spoilt if spoilt != text.text else None


def _lost_placeholder(text: Text, _rng: random.Random) -> str | None:
    spoilt = re.sub(r"\{\w+\}[,،፣]? ?", "", text.text, count=1)
    return spoilt if spoilt != text.text and spoilt.strip() else None


def _another_text(text: Text, rng: random.Random) -> str | None:
    others = [each for each in text.others if each != text.text and "{" not in each]
    return rng.choice(others) if others and "{" not in text.text else None


def _letter_of_another_bin(text: Text, _rng: random.Random) -> str | None:
    if "{bin}" in text.text:
        return text.text.replace("{bin}", "Z", 1)
    spoilt = re.sub(rf"(?<!\S)({BINS[text.tag]})(?!\w)", r"\1 Z", text.text, count=1)
    is_named = text.role in {"headline", "detail"} and re.search(r"\bbins?\b", text.source)
    return spoilt if is_named and spoilt != text.text else None


def _typed_time(text: Text, _rng: random.Random) -> str | None:
    return text.text.replace("{time}", "30 s", 1) if "{time}" in text.text else None


def _time_in_words(text: Text, _rng: random.Random) -> str | None:
    return text.text.replace("{time}", TIME_IN_WORDS[text.tag], 1) if "{time}" in text.text else None


def _half_source(text: Text, _rng: random.Random) -> str | None:
    words, source = text.text.split(" "), text.source.split(" ")
    if len(words) < 4 or len(source) < 4 or "{" in text.text:
        return None
    return " ".join(words[: len(words) // 2] + source[len(source) // 2 :])


def _two_words_changed_over(text: Text, _rng: random.Random) -> str | None:
    words = text.text.split(" ")
    if len(words) < 4 or "{" in text.text:
        return None
    words[1], words[2] = words[2], words[1]
    return " ".join(words) if words != text.text.split(" ") else None


def _last_sentence_lost(text: Text, _rng: random.Random) -> str | None:
    parts = re.split(r"(?<=[.!?؟।።])\s+", text.text)
    return " ".join(parts[:-1]) if len(parts) > 1 and "{" not in parts[-1] else None


def _word_lost(text: Text, rng: random.Random) -> str | None:
    words = text.text.split(" ")
    places = [place for place, word in enumerate(words) if place and "{" not in word and len(word) > 3]
    if len(words) < 4 or not places:
        return None
    place = rng.choice(places)
    return " ".join(words[:place] + words[place + 1 :])


def _rub_for_wash(text: Text, rng: random.Random) -> str | None:
    return _swap(RUBBED)(text, rng) if re.search(r"\b(?:rub|wash)", text.source, re.IGNORECASE) else None


def _in_another_language(text: Text, _rng: random.Random) -> str | None:
    return OTHER_LANGUAGE[text.tag] if "{" not in text.text and len(text.text) > 12 else None


SHARED: dict[str, Spoil] = {
    "nothing visible": lambda _text, _rng: "\u200b\u00a0\u200b",
    "tag": lambda text, _rng: f"<b>{text.text}</b>",
    "entity": lambda text, _rng: f"{text.text} &amp; &nbsp;",
    "mojibake": _mojibake,
    "replacement character": _at_random_space("\ufffd"),
    "letters lost to ??": _question_marks,
    "TODO left": lambda text, _rng: f"TODO {text.text}",
    "line break": _at_random_space("\n"),
    "space before": lambda text, _rng: f" {text.text}",
    "space after": lambda text, _rng: f"{text.text} ",
    "doubled space": _at_random_space(" "),
    "zero-width space in a word": _inside_a_word("\u200b"),
    "soft hyphen in a word": _inside_a_word("\u00ad"),
    "word joiner in a word": _inside_a_word("\u2060"),
    "tag characters": _at_random_space("\U000e0041\U000e0042"),
    "isolate without end": _at_random_space("\u2067"),
    "override of direction": _at_random_space("\u202e"),
    "look-alike letter": _look_alike,
    "word of another script": _other_script_word,
    "mark without a letter": _stray_mark,
    "not normalised": _decomposed,
    "quotes round it all": lambda text, _rng: f"“{text.text}”",
    "placeholder renamed": lambda text, _rng: re.sub(r"\{(?=\w)", "{x", text.text, count=1),
    "stray brace": lambda text, _rng: f"{text.text} {{",
    "act turned round": _only_headlines(_turned_round),
    "other hand layer": _only_headlines(_swap(LAYERS)),
    "rub for wash": _only_headlines(_rub_for_wash),
    "time typed": _typed_time,
    "time in words": _time_in_words,
    "letter of another bin": _letter_of_another_bin,
    "headline of another step": _only_headlines(_another_text),
    "other language": _in_another_language,
}  # fmt: skip
"""Classes that translators and authors share."""

OF_TRANSLATORS: dict[str, Spoil] = {
    **SHARED,
    "left empty": lambda _text, _rng: "",
    "source copied": lambda text, _rng: text.source if len(text.source) > 3 else None,
    "source and a space": lambda text, _rng: f"{text.source} " if len(text.source) > 3 else None,
    "half in the source language": _half_source,
    "placeholder lost": _lost_placeholder,
    "placeholder doubled": lambda text, _rng: f"{text.text} {{time}}",
    "number added": lambda text, _rng: f"{text.text} 5",
    "negation dropped": _negation_dropped,
    "'only' dropped": _only_dropped,
    "presentation forms": _presentation_form,
}

READER_ONLY: dict[str, Spoil] = {
    "last sentence lost": _last_sentence_lost,
    "one word lost": _word_lost,
    "two words changed over": _two_words_changed_over,
}
"""Counted, not promised."""
