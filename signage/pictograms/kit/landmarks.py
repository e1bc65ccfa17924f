"""Named points of the mannequins, so that a scene says ``side.nape+(-22,20)`` and not two numbers."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Annotated

from pydantic import BeforeValidator

from signage.pictograms.kit.bounds import Coordinate
from signage.pictograms.kit.paths import Point

LANDMARKS: Mapping[str, Mapping[str, Point]] = {
    "front": {
        "crown": (48, 16),
        "brow": (48, 26),
        "eye-left": (42.8, 32),
        "eye-right": (53.2, 32),
        "ear-left": (34.4, 34),
        "ear-right": (61.6, 34),
        "nose": (48, 37),
        "mouth": (48, 42),
        "chin": (48, 50),
        "neck": (48, 56),
        "shoulder-left": (29, 73),
        "shoulder-right": (67, 73),
        "elbow-left": (11, 68),
        "elbow-right": (85, 68),
    },
    "side": {
        "head": (46, 32),
        "crown": (47, 14),
        "brow": (59.5, 28),
        "eye": (56, 30),
        "nose": (64, 37),
        "mouth": (61, 42),
        "chin": (56, 51),
        "ear": (44.8, 34),
        "nape": (34, 42),
        "neck": (43, 56),
        "shoulder": (38, 72),
    },
    "standing": {
        "head": (48, 13),
        "neck": (48, 22),
        "shoulder-left": (39, 28.5),
        "shoulder-right": (57, 28.5),
        "waist": (48, 45),
        "waist-left": (39, 45),
        "waist-right": (57, 45),
        "hip-left": (43.4, 54),
        "hip-right": (52.6, 54),
        "knee-left": (42.2, 69),
        "knee-right": (53.8, 69),
        "ankle-left": (41.6, 84),
        "ankle-right": (54.4, 84),
        "floor": (48, 89),
    },
    "seated": {
        "head": (51, 20),
        "shoulder": (41, 35),
        "back": (36, 46),
        "hip": (34, 58),
        "knee": (55, 44),
        "ankle": (72, 60),
        "shin": (68, 45),
        "floor": (52, 89),
    },
}
"""Points by view and name, in the units of a scene, for a mannequin that has not been moved."""

_NAMED = re.compile(r"^([a-z]+)\.([a-z-]+)(?:\s*\+\s*\(\s*(-?[\d.]+)\s*,\s*(-?[\d.]+)\s*\))?$")


def point_of(value: object) -> object:
    """The point that a landmark text such as ``front.chin+(4,-2)`` names; other values pass unchanged.

    Raises ValueError if the text names no landmark.
    """
    if not isinstance(value, str):
        return value
    found = _NAMED.match(value.strip())
    if found is None:
        raise ValueError(f"{value!r} is no point: write [x, y] or a landmark such as side.nape+(-22,20)")
    view, name, x, y = found.groups()
    points = LANDMARKS.get(view)
    if points is None:
        raise ValueError(f"{value!r}: no view {view!r}; views are {', '.join(LANDMARKS)}")
    if name not in points:
        raise ValueError(f"{value!r}: the view {view} has no {name!r}; it has {', '.join(points)}")
    base = points[name]
    return (base[0] + float(x or 0), base[1] + float(y or 0))


PlacePoint = Annotated[tuple[Coordinate, Coordinate], BeforeValidator(point_of)]
"""A point given as two numbers or as the name of a landmark with an optional shift."""
