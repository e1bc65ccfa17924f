"""Language tags (BCP 47) and the direction of their scripts."""

import re

_WELL_FORMED = re.compile(
    r"[A-Za-z]{2,3}(-[A-Za-z]{3}){0,3}(-[A-Za-z]{4})?(-([A-Za-z]{2}|\d{3}))?"
    r"(-([A-Za-z\d]{5,8}|\d[A-Za-z\d]{3}))*(-[0-9A-WY-Za-wy-z](-[A-Za-z\d]{2,8})+)*(-[xX](-[A-Za-z\d]{1,8})+)?"
)
"""The langtag production of RFC 5646 section 2.1, without the grandfathered tags."""

RIGHT_TO_LEFT = frozenset({"ar", "fa", "he", "ur", "ps", "ckb", "ug", "yi", "dv", "sd"})
"""Languages whose usual script runs right to left (CLDR, character order)."""

_SCRIPT_OF_LANGUAGE = {
    "am": "Ethi", "ti": "Ethi", "ar": "Arab", "fa": "Arab", "ur": "Arab", "ps": "Arab", "ckb": "Arab",
    "sd": "Arab", "ug": "Arab", "bn": "Beng", "as": "Beng", "hi": "Deva", "mr": "Deva", "ne": "Deva",
    "he": "Hebr", "yi": "Hebr", "th": "Thai", "lo": "Laoo", "km": "Khmr", "my": "Mymr", "ta": "Taml",
    "te": "Telu", "kn": "Knda", "ml": "Mlym", "gu": "Gujr", "pa": "Guru", "or": "Orya", "si": "Sinh",
    "ka": "Geor", "hy": "Armn", "el": "Grek", "ru": "Cyrl", "uk": "Cyrl", "bg": "Cyrl", "sr": "Cyrl",
    "zh": "Hani", "ja": "Hani", "ko": "Hang", "dv": "Thaa",
}  # fmt: skip
"""The usual script (ISO 15924) of a language; Latin where it is not listed (CLDR, likely subtags)."""


def is_well_formed(tag: str) -> bool:
    """Whether the tag follows RFC 5646; it may still name no registered language."""
    return _WELL_FORMED.fullmatch(tag) is not None


def language_of(tag: str) -> str:
    """The primary language subtag, in lower case."""
    return tag.split("-", maxsplit=1)[0].lower()


def script_of(tag: str) -> str:
    """The script (ISO 15924) that the tag names or that its language usually has."""
    for subtag in tag.split("-")[1:]:
        if len(subtag) == 4 and subtag.isalpha():
            return subtag.title()
        if len(subtag) == 1:
            break
    return _SCRIPT_OF_LANGUAGE.get(language_of(tag), "Latn")


def is_right_to_left(tag: str) -> bool:
    """Whether the language is set from right to left."""
    script = script_of(tag)
    return script in {"Arab", "Hebr", "Thaa", "Syrc", "Nkoo"}
