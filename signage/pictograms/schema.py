"""The shape of a scene file."""

from __future__ import annotations

from typing import Annotated, Any, Literal, Self

from pydantic import BaseModel, ConfigDict, Field, model_validator

from signage.pictograms.kit.landmarks import PlacePoint
from signage.pictograms.kit.nodes import Style

ALTERNATIVE_BUDGET = 90
"""Characters of the sentence that stands for a picture where it is not seen."""

Theme = Literal["don", "doff", "hands"]
MirrorRule = Literal["never", "with-layout"]
Joint = Annotated[tuple[float, float, float], Field(description="x, y and radius")]
Radii = float | list[float]


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


class Curve(_Strict):
    """One outline: exactly one of the forms; ``radius`` softens polygons and rectangles."""

    line: list[PlacePoint] | None = Field(default=None, min_length=2)
    spline: list[PlacePoint] | None = Field(default=None, min_length=2)
    loop: list[PlacePoint] | None = Field(default=None, min_length=3)
    polygon: list[PlacePoint] | None = Field(default=None, min_length=3)
    rectangle: tuple[float, float, float, float] | None = None
    ellipse: tuple[float, float, float, float] | None = None
    circle: tuple[float, float, float] | None = None
    arc: tuple[float, float, float, float, float] | None = None
    limb: list[Joint] | None = Field(default=None, min_length=2)
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


CURVE_FORMS = ("line", "spline", "loop", "polygon", "rectangle", "ellipse", "circle", "arc", "limb", "path")
"""The forms of a curve: ``loop`` is a closed spline, ``arc`` is x, y, radius, first and last angle."""

CLOSED_FORMS = frozenset({"loop", "polygon", "rectangle", "ellipse", "circle", "limb"})
"""Forms that are closed; a path is closed if it ends with Z."""


class ShapeMember(Curve):
    """A piece of a shape: a closed form, or any form with a width."""

    width: float | None = Field(default=None, gt=0)


class Layer(_Strict):
    """One layer: a part by name, a path, an arrow, a shape of melted members, or a group of layers."""

    id: str = Field(pattern=r"^[a-z][a-z0-9-]*$")
    belongs_to: str | None = None
    part: str | None = None
    args: dict[str, Any] = Field(default_factory=dict)
    path: Curve | None = None
    arrow: Curve | None = None
    shape: list[ShapeMember] | None = Field(default=None, min_length=1)
    group: list[Layer] | None = Field(default=None, min_length=1)

    style: Style | None = None
    width: float | None = Field(default=None, gt=0)
    casing: float | None = Field(default=None, ge=0)
    head: float | None = Field(default=None, gt=0)
    both: bool = False
    outline: float | None = Field(default=None, ge=0)
    halo: float | None = Field(default=None, ge=0)
    only: Literal["all", "fill", "outline"] = "all"

    at: PlacePoint = (0.0, 0.0)
    rot: float = 0.0
    scale: float | tuple[float, float] = 1.0
    flip: bool = False
    about: PlacePoint | None = None
    crop: tuple[float, float, float, float] | None = None
    within: list[ShapeMember] | None = Field(default=None, min_length=1)
    keep: float | None = None
    mirror_at: float | None = None

    @model_validator(mode="after")
    def _has_one_content(self) -> Self:
        given = [name for name in LAYER_CONTENTS if getattr(self, name) is not None]
        if len(given) != 1:
            raise ValueError(f"wants exactly one of {', '.join(LAYER_CONTENTS)}; found {given or 'none'}")
        return self


LAYER_CONTENTS = ("part", "path", "arrow", "shape", "group")


class Gloss(_Strict):
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
    gloss: Gloss
    alt: str = Field(min_length=8, max_length=ALTERNATIVE_BUDGET, pattern=r"^[^{}]*$")
    layers: list[Layer] = Field(min_length=1)
    cropped: list[Literal["left", "right", "top", "bottom"]] = Field(default_factory=list)
    alike: list[str] = Field(default_factory=list)
