"""Language tags (BCP 47), their scripts and the direction of these."""

import re
from functools import lru_cache

from babel.core import get_global

_WELL_FORMED = re.compile(
    r"[A-Za-z]{2,3}(-[A-Za-z]{3}){0,3}(-[A-Za-z]{4})?(-([A-Za-z]{2}|\d{3}))?"
    r"(-([A-Za-z\d]{5,8}|\d[A-Za-z\d]{3}))*(-[0-9A-WY-Za-wy-z](-[A-Za-z\d]{2,8})+)*(-[xX](-[A-Za-z\d]{1,8})+)?"
)
"""The langtag production of RFC 5646 section 2.1, without the grandfathered tags."""

_RIGHT_TO_LEFT_SCRIPTS = frozenset({
    "Adlm", "Arab", "Aran", "Armi", "Avst", "Chrs", "Cprt", "Elym", "Gara", "Hatr", "Hebr", "Hung",
    "Khar", "Lydi", "Mand", "Mani", "Mend", "Merc", "Mero", "Narb", "Nbat", "Nkoo", "Orkh", "Ougr",
    "Palm", "Phli", "Phlp", "Phnx", "Prti", "Rohg", "Samr", "Sarb", "Sidt", "Sogd", "Sogo", "Syrc",
    "Syre", "Syrj", "Syrn", "Thaa", "Yezi",
})  # fmt: skip
"""Scripts whose letters have bidi class R or AL (UCD, DerivedBidiClass), with the variants of ISO 15924."""

LATIN = "Latn"

_SINCE_CLDR_44 = {
    "aii": "Syrc", "dgl": "Arab", "grc": "Grek", "grr": "Arab", "kcy": "Arab", "ku_IQ": "Arab",
    "ku_IR": "Arab", "man_GN": "Latn", "mey": "Arab", "mey_SN": "Latn", "mve": "Arab", "mzb": "Arab",
    "omy": "Arab", "oui": "Ougr", "pra": "Latn", "wlo": "Latn", "xsd": "Sidt",
}  # fmt: skip
"""Usual scripts whose direction CLDR has added or corrected since the oldest Babel that may be installed;
the sheets of a language must not turn round with the version of a library."""


def is_well_formed(tag: str) -> bool:
    """Whether the tag follows RFC 5646; it may still name no registered language."""
    return _WELL_FORMED.fullmatch(tag) is not None


def canonical_tag(tag: str) -> str:
    """The tag with the usual case of its subtags (RFC 5646, section 2.1.1): ``ZH-hant-tw`` is zh-Hant-TW."""
    first, *rest = tag.split("-")
    parts, is_extension = [first.lower()], False
    for part in rest:
        is_extension = is_extension or len(part) == 1
        if is_extension:
            parts.append(part.lower())
        elif len(part) == 4 and part.isalpha():
            parts.append(part.title())
        else:
            parts.append(part.upper() if len(part) == 2 else part.lower())
    return "-".join(parts)


def two_letter_form(tag: str) -> str | None:
    """The tag with its language in two letters, where it is written in three: ``fra-CA`` is fr-CA.

    None where there is no such code. RFC 5646 (section 2.2.1) wants the shortest code of a language; which
    codes mean the same is told by CLDR's language aliases.
    """
    language, *rest = tag.split("-")
    short = get_global("language_aliases").get(language.lower(), "")
    return "-".join((short, *rest)) if len(language) == 3 and len(short) == 2 else None


@lru_cache(maxsize=512)
def language_of(tag: str) -> str:
    """The primary language subtag, in lower case."""
    return tag.split("-", maxsplit=1)[0].lower()


@lru_cache(maxsize=512)
def script_of(tag: str) -> str:
    """The script (ISO 15924) that the tag names or that its language usually has.

    The usual script is that of CLDR's likely subtags (UTS #35, part 1, "Likely Subtags"), after a code that
    CLDR has replaced by another; Latin for a language that CLDR does not know.
    """
    subtags = tag.split("-")
    for subtag in subtags[1:]:
        if len(subtag) == 4 and subtag.isalpha():
            return subtag.title()
        if len(subtag) == 1:
            break
    region = next((part.upper() for part in subtags[1:3] if re.fullmatch(r"[A-Za-z]{2}|\d{3}", part)), "")
    return _usual_script(language_of(tag), region)


@lru_cache(maxsize=512)
def _usual_script(language: str, region: str) -> str:
    """The script of a language in a region; the region may be empty."""
    alias = get_global("language_aliases").get(language, language).split("_")
    language, region = alias[0], region or next((part for part in alias[1:] if part.isupper()), "")
    named = next((part for part in alias[1:] if len(part) == 4), "")
    likely = get_global("likely_subtags")
    for key in (f"{language}_{region}", language):
        if key in _SINCE_CLDR_44:
            return named or _SINCE_CLDR_44[key]
        if key in likely:
            return named or str(likely[key].split("_")[1])
    return named or LATIN


def is_right_to_left(tag: str) -> bool:
    """Whether the language is set from right to left."""
    return script_of(tag) in _RIGHT_TO_LEFT_SCRIPTS
