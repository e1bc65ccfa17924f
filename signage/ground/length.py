"""Lengths. Inside the programme a length is a float in millimetres; type sizes are floats in points."""

import re

MM_PER_POINT = 25.4 / 72
"""One DTP point (1/72 inch) in millimetres, exact by definition."""

POINTS_PER_MM = 72 / 25.4

_MM_PER_UNIT = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "pt": MM_PER_POINT}
_LENGTH = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(mm|cm|m|in|pt)\s*")


def parse_length(text: str) -> float:
    """Millimetres of a length with its unit, such as ``1.5 m`` or ``210 mm``.

    Raises ValueError when the unit is absent or unknown.
    """
    match = _LENGTH.fullmatch(text)
    if match is None:
        raise ValueError(f"'{text}' is not a length; write a number and a unit, such as 1.5 m or 210 mm")
    return float(match.group(1)) * _MM_PER_UNIT[match.group(2)]
