"""The shape of a scene file."""

from __future__ import annotations

from typing import Annotated, Any, Literal, Self

from pydantic import BaseModel, ConfigDict, Field, field_validator, model_validator

from signage.pictograms.kit.bounds import (
    LONGEST_ARC,
    MOST_LAYERS,
    MOST_MEMBERS,
    MOST_POINTS,
    Angle,
    BeyondBoundsError,
    Coordinate,
    Scale,
    Width,
    bounded,
)
from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import Style
from signage.pictograms.kit.paths import parse_path
from signage.pictograms.scene import MirrorRule, Theme

ALTERNATIVE_BUDGET = 90
"""Characters of the sentence that stands for a picture where it is not seen."""

Joint = Annotated[tuple[Coordinate, Coordinate, Coordinate], Field(description="x, y and radius")]
Radii = Coordinate | Annotated[list[Coordinate], Field(max_length=MOST_POINTS)]
Extent = tuple[Coordinate, Coordinate, Coordinate, Coordinate]


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


class Curve(_Strict):
    """One outline: exactly one of the forms; ``radius`` softens polygons and rectangles."""

    line: list[PlacePoint] | None = Field(default=None, min_length=2, max_length=MOST_POINTS)
    spline: list[PlacePoint] | None = Field(default=None, min_length=2, max_length=MOST_POINTS)
    loop: list[PlacePoint] | None = Field(default=None, min_length=3, max_length=MOST_POINTS)
    polygon: list[PlacePoint] | None = Field(default=None, min_length=3, max_length=MOST_POINTS)
    rectangle: Extent | None = None
    ellipse: Extent | None = None
    circle: tuple[Coordinate, Coordinate, Coordinate] | None = None
    arc: tuple[Coordinate, Coordinate, Coordinate, Angle, Angle] | None = None
    limb: list[Joint] | None = Field(default=None, min_length=2, max_length=MOST_POINTS)
    path: str | None = None
    radius: Radii | None = None

    @property
    def form(self) -> str:
        """The name of the form that is given."""
        return next(name for name in CURVE_FORMS if getattr(self, name) is not None)

    @model_validator(mode="after")
    def _has_one_form(self) -> Self:
        given = [name for name in CURVE_FORMS if getattr(self, name) is not None]
        if len(given) != 1:
            raise ValueError(f"wants exactly one of {', '.join(CURVE_FORMS)}; found {given or 'none'}")
        if self.radius is not None and given[0] not in {"polygon", "rectangle"}:
            raise ValueError(f"radius belongs to polygon and rectangle, not to {given[0]}")
        if given[0] == "rectangle" and isinstance(self.radius, list):
            raise ValueError("a rectangle has one radius for all its corners")
        return self

    @field_validator("arc")
    @classmethod
    def _turns_once(cls, arc: tuple[float, ...] | None) -> tuple[float, ...] | None:
        if arc is not None and abs(arc[4] - arc[3]) > LONGEST_ARC:
            turn = abs(arc[4] - arc[3])
            raise BeyondBoundsError(f"{turn:g} degrees were found; at most {LONGEST_ARC:g} were wanted")
        return arc

    @field_validator("path")
    @classmethod
    def _is_short(cls, path: str | None) -> str | None:
        segments = parse_path(path) if path is not None else ()
        if len(segments) > MOST_POINTS:
            found = f"{len(segments)} commands were found"
            raise BeyondBoundsError(f"{found}; at most {MOST_POINTS} were wanted")
        for segment in segments:
            bounded(segment)
        return path


CURVE_FORMS = ("line", "spline", "loop", "polygon", "rectangle", "ellipse", "circle", "arc", "limb", "path")
"""The forms of a curve: ``loop`` is a closed spline, ``arc`` is x, y, radius, first and last angle."""

CLOSED_FORMS = frozenset({"loop", "polygon", "rectangle", "ellipse", "circle", "limb"})
"""Forms that are closed; a path is closed if it ends with Z."""


class ShapeMember(Curve):
    """A piece of a shape: a closed form, or any form with a width."""

    width: Width | None = Field(default=None, gt=0)


class Layer(_Strict):
    """One layer: a part by name, a path, an arrow, a shape of melted members, or a group of layers."""

    id: str = Field(pattern=r"^[a-z][a-z0-9-]*$")
    belongs_to: str | None = None
    part: str | None = None
    args: dict[str, Any] = Field(default_factory=dict)
    path: Curve | None = None
    arrow: Curve | None = None
    shape: list[ShapeMember] | None = Field(default=None, min_length=1, max_length=MOST_MEMBERS)
    group: list[Layer] | None = Field(default=None, min_length=1, max_length=MOST_LAYERS)

    style: Style | None = None
    width: Width | None = Field(default=None, gt=0)
    casing: Width | None = None
    head: Width | None = Field(default=None, gt=0)
    both: bool = False
    outline: Width | None = None
    halo: Width | None = None
    only: Literal["all", "fill", "outline"] = "all"

    at: PlacePoint = (0.0, 0.0)
    rot: Angle = 0.0
    scale: Scale | tuple[Scale, Scale] = 1.0
    flip: bool = False
    about: PlacePoint | None = None
    crop: Extent | None = None
    within: list[ShapeMember] | None = Field(default=None, min_length=1, max_length=MOST_MEMBERS)
    keep: Coordinate | None = None
    mirror_at: Coordinate | None = None

    @model_validator(mode="after")
    def _has_one_content(self) -> Self:
        given = [name for name in LAYER_CONTENTS if getattr(self, name) is not None]
        if len(given) != 1:
            raise ValueError(f"wants exactly one of {', '.join(LAYER_CONTENTS)}; found {given or 'none'}")
        return self


LAYER_CONTENTS = ("part", "path", "arrow", "shape", "group")


class GlossOfFile(_Strict):
    """Who does what to what, and where: what a trial of the picture asks readers for."""

    who: str = Field(min_length=1)
    does: str = Field(min_length=1)
    what: str = Field(min_length=1)
    where: str = ""


class SceneFile(_Strict):
    """A scene as authored. ``alike`` names scenes that are meant to look the same at a glance."""

    theme: Theme
    focus: str
    handed: bool = False
    mirror: MirrorRule = "never"
    gloss: GlossOfFile
    alt: str = Field(min_length=8, max_length=ALTERNATIVE_BUDGET, pattern=r"^[^{}]*$")
    layers: list[Layer] = Field(min_length=1, max_length=MOST_LAYERS)
    cropped: list[Literal["left", "right", "top", "bottom"]] = Field(default_factory=list)
    alike: list[str] = Field(default_factory=list)
