"""Values in the notation of PDF (ISO 32000-1, section 7.3)."""

from collections.abc import Iterable, Mapping
from functools import lru_cache

from signage.ground.geometry import Affine

_NAME_NEEDS_ESCAPE = frozenset("%()<>[]{}/#")
_LITERAL_ESCAPES = str.maketrans({"\\": "\\\\", "(": "\\(", ")": "\\)", "\r": "\\r", "\n": "\\n"})


def number(value: float, decimals: int = 3) -> str:
    """The shortest notation after rounding; never an exponent, never a negative zero."""
    text = "%.*f" % (decimals, value)  # noqa: UP031  twice as fast as a nested format, and it is called most
    if decimals:
        text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def numbers(values: Iterable[float], decimals: int = 3) -> str:
    """Numbers with blanks between."""
    return " ".join([number(value, decimals) for value in values])


def matrix(affine: Affine) -> str:
    """The six numbers of a map; the linear part with more digits, since it multiplies lengths."""
    linear = numbers((affine.a, affine.b, affine.c, affine.d), 6)
    return f"{linear} {numbers((affine.e, affine.f))}"


def name(text: str) -> str:
    """A name object; signs that PDF reserves are written as ``#`` and two hexadecimal digits."""
    signs = (
        sign if "!" <= sign <= "~" and sign not in _NAME_NEEDS_ESCAPE else f"#{ord(sign):02X}"
        for sign in text
    )
    return "/" + "".join(signs)


def text_string(text: str) -> str:
    """A text string: printable ASCII as it stands, all else as UTF-16 in hexadecimal (section 7.9.2.2)."""
    if text.isascii() and text.isprintable():
        return f"({text.translate(_LITERAL_ESCAPES)})"
    return f"<FEFF{text.encode('utf-16-be').hex().upper()}>"


def array(values: Iterable[str]) -> str:
    """An array of values that are in notation already."""
    return f"[{' '.join(values)}]"


def dictionary(entries: Mapping[str, str]) -> str:
    """A dictionary; the values are in notation already."""
    return f"<<{' '.join([f'/{key} {value}' for key, value in entries.items()])}>>"


def reference(object_number: int) -> str:
    """A reference to an indirect object."""
    return f"{object_number} 0 R"


@lru_cache(maxsize=256)
def colour_numbers(colour: str) -> str:
    """Red, green and blue between 0 and 1 of ``#RRGGBB``."""
    return numbers(int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5))
