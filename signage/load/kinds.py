"""The kinds of scalar that content files hold, as pydantic types with messages in plain words.

Every scalar arrives as a text; these types alone decide what it becomes.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date
from typing import Annotated, Any
from unicodedata import combining

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema
from pydantic_core.core_schema import no_info_before_validator_function

from signage.ground.language import is_well_formed
from signage.ground.length import parse_length
from signage.load import faults
from signage.load.kind import Kind, fault_error, wanted_text
from signage.load.suggestion import shorten, suggest

LONGEST_TEXT = 600
"""Characters; the longest text that any sheet has room for is a tenth of this. Common practice, no source."""

LONGEST_NAME = 120
LONGEST_IDENTIFIER = 60
"""An identifier becomes a part of file names, which most file systems end at 255 bytes."""

LONGEST_ADDRESS = 100
"""With the path of a step behind it, a longer one makes codes that no card has room for."""

EARLIEST, LATEST = date(2000, 1, 1), date(2199, 12, 31)
"""Days outside are slips of the keyboard, not days of review."""

IDENTIFIER = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
WHOLE_NUMBER = re.compile(r"0|[1-9][0-9]{0,8}")
DECIMAL_NUMBER = re.compile(r"(0|[1-9][0-9]{0,8})\.[0-9]{1,9}")
YES_NO = {"yes": True, "true": True, "no": False, "false": False}
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_CODE = re.compile(r"[A-Z][A-Z0-9]{0,5}")
_LABEL = re.compile(r"[A-Z0-9]{1,3}")
_ADDRESS = re.compile(r"https?://([A-Za-z0-9.\-]+)(?::([0-9]{1,5}))?(/[!-~]*)?")
_HOST_LABEL = re.compile(r"[A-Za-z0-9]([A-Za-z0-9-]{0,61}[A-Za-z0-9])?")
"""A label of a host name (RFC 1123, section 2.1; length by RFC 1035, section 2.3.4)."""

_MOST_MARKS = 30
"""Marks in a row of the Stream-Safe Text Format (UAX #15, section 13)."""

_PILED = re.compile(f"m{{{_MOST_MARKS + 1}}}")
_SPACES = re.compile(r"[ \t\r\n]+")


def _text_of_at_most(longest: int) -> Callable[[Any], str]:
    """A reader of texts; line breaks and runs of spaces become one space."""

    def read(value: Any) -> str:
        text = _SPACES.sub(" ", wanted_text(value, "a text")).strip(" ")
        if not text:
            raise fault_error(
                faults.WRONG_KIND, "The text is empty.", "Write the text, or leave the key out."
            )
        if len(text) > longest:
            raise fault_error(
                faults.WRONG_KIND,
                f"The text is {len(text)} characters long; at most {longest} were wanted.",
                "Say it in fewer words, or in several steps.",
            )
        if _PILED.search("".join("m" if combining(character) else "." for character in text)):
            raise fault_error(
                faults.FORBIDDEN_CHARACTER,
                f"More than {_MOST_MARKS} marks stand on one letter, which no language writes.",
                "Delete the marks, or write the word anew.",
            )
        return text

    return read


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


def read_length(value: Any) -> float:
    """The millimetres of a length with its unit."""
    text = wanted_text(value, "a length with its unit")
    try:
        return parse_length(text)
    except ValueError:
        raise fault_error(
            faults.WRONG_KIND,
            f"'{shorten(text)}' is not a length.",
            "Write a number and a unit (mm, cm, m, in, pt), such as 1.5 m or 210 mm.",
        ) from None


def length_between(least: str, most: str, what: str) -> Kind:
    """A length from one to another, both as they are written in files; ``what`` names it in messages."""
    lowest, highest = parse_length(least), parse_length(most)

    def read(value: Any) -> float:
        length = read_length(value)
        if not lowest <= length <= highest:
            raise fault_error(
                faults.WRONG_KIND,
                f"'{shorten(value)}' is no {what}; {least} to {most} was wanted.",
                "Check the number and the unit (mm, cm, m, in, pt).",
            )
        return length

    return Kind(
        read,
        "length",
        f"a number and a unit (mm, cm, m, in, pt), {least} to {most}",
        {"type": "string", "pattern": r"^\s*\d+(\.\d+)?\s*(mm|cm|m|in|pt)\s*$"},
    )


def number_between(least: int, most: int, what: str) -> Kind:
    """A whole number from one to another; ``what`` names it in messages."""

    def read(value: Any) -> int:
        number = read_whole_number(value)
        if not least <= number <= most:
            raise fault_error(
                faults.WRONG_KIND,
                f"'{number}' is no {what}; {least} to {most} was wanted.",
                "Check the number.",
            )
        return number

    form = f"digits only, {least} to {most}"
    return Kind(read, "whole number", form, {"type": "integer", "minimum": least, "maximum": most})


def _read_date(value: Any) -> date:
    text = wanted_text(value, "a date")
    if _DATE.fullmatch(text) is None:
        raise fault_error(
            faults.WRONG_KIND,
            f"'{shorten(text)}' is not a date.",
            "Write year, month and day with hyphens, such as 2027-05-31.",
        )
    try:
        day = date.fromisoformat(text)
    except ValueError:
        raise fault_error(
            faults.WRONG_KIND,
            f"'{text}' is not a day of the calendar.",
            "Write year, month and day, such as 2027-05-31.",
        ) from None
    return _in_our_time(day)


def _in_our_time(day: date) -> date:
    """The day, unless it is so far away that it can only be a slip."""
    if EARLIEST <= day <= LATEST:
        return day
    raise fault_error(
        faults.WRONG_KIND,
        f"'{day.isoformat()}' lies outside the years {EARLIEST.year} to {LATEST.year}.",
        "Check the year, such as 2027-05-31.",
    )


def _matching(pattern: re.Pattern[str], what: str, cure: str) -> Callable[[Any], str]:
    """A reader of texts that have a certain form."""

    def read(value: Any) -> str:
        text = wanted_text(value, what)
        if pattern.fullmatch(text) is None:
            raise fault_error(faults.MALFORMED_NAME, f"'{shorten(text)}' is not {what}.", cure)
        return text

    return read


def _read_identifier(value: Any) -> str:
    text = _READ_IDENTIFIER_FORM(value)
    if len(text) > LONGEST_IDENTIFIER:
        raise fault_error(
            faults.MALFORMED_NAME,
            f"'{shorten(text)}' has {len(text)} characters; at most {LONGEST_IDENTIFIER} were wanted.",
            "Choose a shorter name; it is never printed.",
        )
    return text


def _read_address(value: Any) -> str:
    text = wanted_text(value, "a web address")
    match = _ADDRESS.fullmatch(text)
    labels = match[1].removesuffix(".").split(".") if match else ()
    if match is None or not all(_HOST_LABEL.fullmatch(label) for label in labels):
        raise fault_error(
            faults.MALFORMED_NAME,
            f"'{shorten(text)}' is not a web address.",
            "Write http:// or https:// and the name of the machine, such as http://ward.internal:8080.",
        )
    if match[2] is not None and not 1 <= int(match[2]) <= 65535:
        raise fault_error(
            faults.MALFORMED_NAME,
            f"The port {match[2]} in '{shorten(text)}' does not exist; 1 to 65535 was wanted.",
            "Write the port of the server, such as :8080, or leave it out.",
        )
    if len(text) > LONGEST_ADDRESS:
        raise fault_error(
            faults.WRONG_KIND,
            f"The address is {len(text)} characters long; at most {LONGEST_ADDRESS} were wanted, since it "
            "stands in every code of a sheet.",
            "Give the server a short name, such as http://ward.internal:8080.",
        )
    return text


def _read_tag(value: Any) -> str:
    text = wanted_text(value, "a language tag")
    if not (text.isascii() and is_well_formed(text)):
        raise fault_error(
            faults.MALFORMED_NAME,
            f"'{shorten(text)}' is not a language tag.",
            "Write a tag of BCP 47 with hyphens, such as fr, pt-BR or sr-Latn.",
        )
    return text


def one_of(*words: str) -> Kind:
    """A kind of text of which the given words only may stand there; members of an enumeration stay so."""

    def read(value: Any) -> str:
        text = wanted_text(value, f"one of {', '.join(words)}")
        for word in words:
            if word == text:
                return word
        raise fault_error(
            faults.UNKNOWN_WORD,
            f"'{shorten(text)}' is not one of the words that may stand here.",
            suggest(text, words, "They are"),
        )

    choices = [*words, *(YES_NO[word] for word in words if word in YES_NO)]
    return Kind(read, "word", "one of the words", {"enum": choices}, words)


def _refuse_empty(value: Any) -> Any:
    if value in ((), {}):
        found = "a list" if value == () else "a mapping"
        raise fault_error(
            faults.WRONG_KIND,
            f"Here stands {found} without entries; at least one was wanted.",
            "Add an entry.",
        )
    return value


class _NotEmpty:
    """A list or mapping with at least one entry."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return no_info_before_validator_function(_refuse_empty, handler(source))

    def __get_pydantic_json_schema__(
        self, core_schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        schema = handler(core_schema)
        return {**schema, "minItems" if schema.get("type") == "array" else "minProperties": 1}


NOT_EMPTY = _NotEmpty()
"""Refuses a list or mapping that holds nothing; the kind of its entries is judged elsewhere."""

_READ_IDENTIFIER_FORM = _matching(
    IDENTIFIER,
    "an identifier",
    "Use letters a to z, digits and single hyphens, beginning with a letter, such as outer-gloves.",
)
_READ_CODE = _matching(
    _CODE, "a code", "Use a capital letter and up to five capital letters or digits, such as P1."
)
_READ_LABEL = _matching(_LABEL, "a label code", "Use one to three capital letters or digits, such as A.")


def _form(pattern: re.Pattern[str], **more: Any) -> dict[str, Any]:
    """The JSON schema of a text of a certain form."""
    return {"type": "string", "pattern": f"^({pattern.pattern})$", **more}


def _text(longest: int) -> Kind:
    """Texts; editors read a bare 12 or no as something else, the programme every scalar as it is written."""
    schema = {"type": ["string", "number", "boolean"], "maxLength": longest}
    return Kind(_text_of_at_most(longest), "text", f"at most {longest} characters", schema)


ReadableText = Annotated[str, _text(LONGEST_TEXT)]
"""A text for people."""

Name = Annotated[str, _text(LONGEST_NAME)]
"""The name or title of something, or a role."""

YesNo = Annotated[bool, Kind(_read_yes_no, "yes or no", "yes or no", {"enum": [True, False, *YES_NO]})]
WholeNumber = Annotated[
    int, Kind(read_whole_number, "whole number", "digits only", {"type": "integer", "minimum": 0})
]
CountingNumber = Annotated[
    int,
    Kind(_read_counting_number, "whole number", "digits only, 1 or more", {"type": "integer", "minimum": 1}),
]
IsoDate = Annotated[
    date,
    Kind(_read_date, "date", "year, month and day, such as 2027-05-31", {"type": "string", "format": "date"}),
]
Identifier = Annotated[
    str,
    Kind(
        _read_identifier,
        "identifier",
        f"letters a to z, digits and single hyphens, at most {LONGEST_IDENTIFIER}, such as outer-gloves",
        _form(IDENTIFIER, maxLength=LONGEST_IDENTIFIER),
    ),
]
ProtocolCode = Annotated[
    str,
    Kind(_READ_CODE, "code", "a capital letter and up to five capitals or digits, such as P1", _form(_CODE)),
]
LabelCode = Annotated[
    str,
    Kind(
        _READ_LABEL,
        "label",
        "one to three capitals or digits, such as A",
        {"anyOf": [_form(_LABEL), {"type": "integer", "minimum": 0, "maximum": 999}]},
    ),
]
WebAddress = Annotated[
    str,
    Kind(
        _read_address,
        "web address",
        f"http:// or https:// and the name of a machine, at most {LONGEST_ADDRESS} characters",
        _form(_ADDRESS, maxLength=LONGEST_ADDRESS),
    ),
]
LanguageTag = Annotated[
    str,
    Kind(
        _read_tag,
        "language tag",
        "a tag of BCP 47, such as fr, pt-BR or sr-Latn",
        {"type": "string", "pattern": "^[A-Za-z]{2,3}(-[A-Za-z0-9]{1,8})*$"},
    ),
]
