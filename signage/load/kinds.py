"""The kinds of scalar that content files hold, as pydantic types with messages in plain words.

Every scalar arrives as a text; these types alone decide what it becomes.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from typing import Annotated, Any

from pydantic import BeforeValidator
from pydantic_core import PydanticCustomError

from signage.ground.fault import InputFault
from signage.ground.language import is_well_formed
from signage.ground.length import parse_length
from signage.load import faults
from signage.load.suggestion import shorten, suggest

LONGEST_LENGTH = 100_000.0
"""Millimetres; no wall and no reading distance of a ward is longer than 100 m."""

IDENTIFIER = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
WHOLE_NUMBER = re.compile(r"0|[1-9][0-9]{0,8}")
DECIMAL_NUMBER = re.compile(r"(0|[1-9][0-9]{0,8})\.[0-9]{1,9}")
YES_NO = {"yes": True, "true": True, "no": False, "false": False}
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_CODE = re.compile(r"[A-Z][A-Z0-9]{0,5}")
_LABEL = re.compile(r"[A-Z0-9]{1,3}")
_ADDRESS = re.compile(r"https?://[A-Za-z0-9.\-]+(:[0-9]{1,5})?(/[!-~]*)?")
_SPACES = re.compile(r"[ \t\r\n]+")


def fault_error(fault: InputFault, message: str, hint: str = "") -> PydanticCustomError:
    """An error for pydantic to carry; validation turns it into a problem with its place."""
    return PydanticCustomError("content", "{message}", {"fault": fault, "message": message, "hint": hint})


def kind_of(value: object) -> str:
    """What a value is, in the words of messages."""
    if isinstance(value, dict):
        return "a mapping"
    if isinstance(value, tuple):
        return "a list"
    return "a text" if isinstance(value, str) else "a value that was refused"


def wanted_text(value: Any, wanted: str) -> str:
    """The value where it is a text; else the error that says what was wanted."""
    if isinstance(value, str):
        return value
    raise fault_error(faults.WRONG_KIND, f"Here stands {kind_of(value)}; {wanted} was wanted.")


def _read_text(value: Any) -> str:
    text = _SPACES.sub(" ", wanted_text(value, "a text")).strip(" ")
    if not text:
        raise fault_error(faults.WRONG_KIND, "The text is empty.", "Write the text, or leave the key out.")
    return text


def _read_yes_no(value: Any) -> bool:
    text = wanted_text(value, "yes or no")
    if text not in YES_NO:
        raise fault_error(faults.WRONG_KIND, f"'{shorten(text)}' is neither yes nor no.", "Write yes or no.")
    return YES_NO[text]


def read_whole_number(value: Any) -> int:
    """A number such as ``20``; no sign, no leading zero, no unit, at most nine digits."""
    text = wanted_text(value, "a whole number")
    if WHOLE_NUMBER.fullmatch(text) is None:
        raise fault_error(
            faults.WRONG_KIND,
            f"'{shorten(text)}' is not a whole number.",
            "Write digits only, without unit, sign or leading zero, such as 20.",
        )
    return int(text)


def _read_counting_number(value: Any) -> int:
    number = read_whole_number(value)
    if number < 1:
        raise fault_error(faults.WRONG_KIND, "The number is 0; 1 or more was wanted.", "Write 1 or more.")
    return number


def _read_length(value: Any) -> float:
    text = wanted_text(value, "a length with its unit")
    try:
        length = parse_length(text)
    except ValueError:
        raise fault_error(
            faults.WRONG_KIND,
            f"'{shorten(text)}' is not a length.",
            "Write a number and a unit (mm, cm, m, in, pt), such as 1.5 m or 210 mm.",
        ) from None
    if length > LONGEST_LENGTH:
        raise fault_error(
            faults.WRONG_KIND, f"'{shorten(text)}' is longer than 100 m.", "Check the number and the unit."
        )
    return length


def _read_extent(value: Any) -> float:
    length = _read_length(value)
    if length <= 0:
        raise fault_error(
            faults.WRONG_KIND, "The length is 0; more was wanted.", "Write the measured length."
        )
    return length


def _read_date(value: Any) -> date:
    text = wanted_text(value, "a date")
    try:
        if _DATE.fullmatch(text):
            return date.fromisoformat(text)
    except ValueError:
        raise fault_error(
            faults.WRONG_KIND,
            f"'{text}' is not a day of the calendar.",
            "Write year, month and day, such as 2027-05-31.",
        ) from None
    raise fault_error(
        faults.WRONG_KIND,
        f"'{shorten(text)}' is not a date.",
        "Write year, month and day with hyphens, such as 2027-05-31.",
    )


def _matching(pattern: re.Pattern[str], what: str, cure: str) -> Callable[[Any], str]:
    """A reader of texts that have a certain form."""

    def read(value: Any) -> str:
        text = wanted_text(value, what)
        if pattern.fullmatch(text) is None:
            raise fault_error(faults.MALFORMED_NAME, f"'{shorten(text)}' is not {what}.", cure)
        return text

    return read


def _read_tag(value: Any) -> str:
    text = wanted_text(value, "a language tag")
    if not (text.isascii() and is_well_formed(text)):
        raise fault_error(
            faults.MALFORMED_NAME,
            f"'{shorten(text)}' is not a language tag.",
            "Write a tag of BCP 47 with hyphens, such as fr, pt-BR or sr-Latn.",
        )
    return text


def one_of(*words: str) -> BeforeValidator:
    """A reader of texts that accepts the given words only."""

    def read(value: Any) -> str:
        text = wanted_text(value, f"one of {', '.join(words)}")
        if text not in words:
            raise fault_error(
                faults.UNKNOWN_WORD,
                f"'{shorten(text)}' is not one of the words that may stand here.",
                suggest(text, words, "They are"),
            )
        return text

    return BeforeValidator(read)


def _refuse_empty(value: Any) -> Any:
    if value in ((), {}):
        found = "a list" if value == () else "a mapping"
        raise fault_error(
            faults.WRONG_KIND,
            f"Here stands {found} without entries; at least one was wanted.",
            "Add an entry.",
        )
    return value


NOT_EMPTY = BeforeValidator(_refuse_empty)
"""Refuses a list or mapping that holds nothing; the kind of its entries is judged elsewhere."""

_READ_IDENTIFIER = _matching(
    IDENTIFIER,
    "an identifier",
    "Use letters a to z, digits and single hyphens, beginning with a letter, such as outer-gloves.",
)
_READ_CODE = _matching(
    _CODE, "a code", "Use a capital letter and up to five capital letters or digits, such as P1."
)
_READ_LABEL = _matching(_LABEL, "a label code", "Use one to three capital letters or digits, such as A.")
_READ_ADDRESS = _matching(
    _ADDRESS, "a web address", "Write it with http:// or https://, such as http://ward.internal:8080."
)

ReadableText = Annotated[str, BeforeValidator(_read_text)]
"""A text for people; line breaks and runs of spaces become one space."""

YesNo = Annotated[bool, BeforeValidator(_read_yes_no)]
WholeNumber = Annotated[int, BeforeValidator(read_whole_number)]
CountingNumber = Annotated[int, BeforeValidator(_read_counting_number)]
Length = Annotated[float, BeforeValidator(_read_length)]
"""Millimetres, 0 or more."""

Extent = Annotated[float, BeforeValidator(_read_extent)]
"""Millimetres, more than 0."""

IsoDate = Annotated[date, BeforeValidator(_read_date)]
Identifier = Annotated[str, BeforeValidator(_READ_IDENTIFIER)]
ProtocolCode = Annotated[str, BeforeValidator(_READ_CODE)]
LabelCode = Annotated[str, BeforeValidator(_READ_LABEL)]
WebAddress = Annotated[str, BeforeValidator(_READ_ADDRESS)]
LanguageTag = Annotated[str, BeforeValidator(_read_tag)]
