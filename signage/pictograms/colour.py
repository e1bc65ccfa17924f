"""Lightness and difference of colours, as seen with and without a colour-vision deficiency."""

from __future__ import annotations

import math
from typing import Literal

Deficiency = Literal["protan", "deutan", "tritan"]
Triple = tuple[float, float, float]

DEFICIENCY_MATRICES: dict[Deficiency, tuple[Triple, Triple, Triple]] = {
    "protan": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deutan": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "tritan": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}
"""Severity 1.0 on linear RGB: Machado, Oliveira and Fernandes 2009, a physiologically based model."""

_TO_XYZ: tuple[Triple, Triple, Triple] = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
_WHITE: Triple = (0.95047, 1.0, 1.08883)
"""Linear sRGB to CIE XYZ, and the white D65 (IEC 61966-2-1)."""


def linear(colour: str) -> Triple:
    """The linear light of ``#RRGGBB`` (IEC 61966-2-1). Raises ValueError on another form."""
    if len(colour) != 7 or not colour.startswith("#"):
        raise ValueError(f"{colour!r} is no colour of the form #RRGGBB")
    red, green, blue = (_decode(int(colour[index : index + 2], 16) / 255) for index in (1, 3, 5))
    return (red, green, blue)


def _decode(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4


def _encode(value: float) -> int:
    value = min(1.0, max(0.0, value))
    signal = value * 12.92 if value <= 0.0031308 else 1.055 * value ** (1 / 2.4) - 0.055
    return round(signal * 255)


def _multiply(matrix: tuple[Triple, Triple, Triple], vector: Triple) -> Triple:
    first, second, third = (
        math.fsum(factor * value for factor, value in zip(row, vector, strict=True)) for row in matrix
    )
    return (first, second, third)


def as_seen_with(deficiency: Deficiency, colour: str) -> str:
    """The colour as someone with a full deficiency sees it."""
    seen = _multiply(DEFICIENCY_MATRICES[deficiency], linear(colour))
    return "#" + "".join(f"{_encode(value):02X}" for value in seen)


def lab(colour: str) -> Triple:
    """CIE 1976 L*a*b* under D65 (CIE 15)."""
    x, y, z = (
        _compress(value / white)
        for value, white in zip(_multiply(_TO_XYZ, linear(colour)), _WHITE, strict=True)
    )
    return (116 * y - 16, 500 * (x - y), 200 * (y - z))


def _compress(value: float) -> float:
    return value ** (1 / 3) if value > (6 / 29) ** 3 else value / (3 * (6 / 29) ** 2) + 4 / 29


def lightness(colour: str) -> float:
    """L* of a colour, 0 black to 100 white."""
    return lab(colour)[0]


def difference(first: str, second: str) -> float:
    """The distance of two colours in L*a*b* (CIE 1976)."""
    return math.dist(lab(first), lab(second))
