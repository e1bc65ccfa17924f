"""From the layers of a scene to nodes."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from pydantic import ValidationError

from signage.ground.geometry import Affine, Box, Path, mirroring, rotation, scaling, translation
from signage.pictograms.kit.marks import arrow
from signage.pictograms.kit.nodes import (
    DETAIL,
    ITEM,
    Blob,
    Group,
    Member,
    Node,
    Stroke,
    Style,
    group,
)
from signage.pictograms.kit.parts import part_named, part_names
from signage.pictograms.kit.paths import (
    arc,
    ellipse,
    limb,
    line,
    parse_path,
    rounded_polygon,
    rounded_rectangle,
    spline,
)
from signage.pictograms.reported import reported
from signage.pictograms.schema import CLOSED_FORMS, Curve, Layer, SceneFile, ShapeMember

_RADIUS = 3.0


@dataclass(frozen=True, slots=True)
class LayerFaultError(Exception):
    """Why a layer cannot be drawn, which of its keys says so, and whether it draws too far or too much."""

    location: tuple[str | int, ...]
    message: str
    is_beyond_bounds: bool = False


def build_scene(scene: SceneFile) -> tuple[Node, ...]:
    """The nodes of a scene in painting order. Raises LayerFaultError."""
    return tuple(
        _layer_node(layer, scene.focus, is_item=False, location=("layers", index))
        for index, layer in enumerate(scene.layers)
    )


def curve_paths(curve: Curve) -> tuple[Path, ...]:
    """The outlines of a curve: one, or one a bone for a limb. Raises ValueError on a wrong path text."""
    radius = _RADIUS if curve.radius is None else curve.radius
    match curve.form:
        case "line":
            return (line(*(curve.line or ())),)
        case "spline":
            return (spline(curve.spline or ()),)
        case "loop":
            return (spline(curve.loop or (), closed=True),)
        case "polygon":
            return (rounded_polygon(curve.polygon or (), radius),)
        case "rectangle":
            x, y, width, height = curve.rectangle or (0, 0, 0, 0)
            return (rounded_rectangle(x, y, width, height, cast("float", radius)),)
        case "ellipse":
            return (ellipse(*(curve.ellipse or (0, 0, 1, 1))),)
        case "circle":
            return (ellipse(*(curve.circle or (0, 0, 1))),)
        case "arc":
            return (arc(*(curve.arc or (0, 0, 1, 0, 90))),)
        case "limb":
            return limb(curve.limb or ())
        case _:
            return (parse_path(curve.path or ""),)


def _members(pieces: list[ShapeMember]) -> tuple[Member, ...]:
    members: list[Member] = []
    for piece in pieces:
        paths = curve_paths(piece)
        is_closed = piece.form in CLOSED_FORMS or paths[-1][-1][0] == "Z"
        if piece.width is None and not is_closed:
            raise ValueError(f"an open {piece.form} in a shape wants a width")
        members.extend(Member(path, piece.width or 0.0) for path in paths)
    return tuple(members)


def _layer_node(layer: Layer, focus: str, is_item: bool, location: tuple[str | int, ...]) -> Node:
    is_item = is_item or focus in {layer.id, layer.belongs_to}
    try:
        node = _content(layer, focus, is_item, location)
        within = _members(layer.within) if layer.within is not None else ()
    except ValidationError as error:
        found = reported(error.errors())
        at = (*location, "args", *found[0].location[:1])
        told = f"layer {layer.id!r}: {'; '.join(fault.message for fault in found)}"
        raise LayerFaultError(at, told, any(fault.is_beyond_bounds for fault in found)) from error
    except ValueError as error:
        raise LayerFaultError(location, f"layer {layer.id!r}: {error}") from error
    placed = Group(
        (node,),
        _transform(layer),
        role=ITEM if is_item else layer.id,
        crop=Box(*layer.crop) if layer.crop is not None else None,
        within=within,
        upright=layer.keep,
    )
    if layer.mirror_at is None:
        return placed
    return group(placed, group(placed, transform=mirroring(layer.mirror_at)))


def _content(layer: Layer, focus: str, is_item: bool, location: tuple[str | int, ...]) -> Node:
    if layer.group is not None:
        return group(
            *(
                _layer_node(child, focus, is_item, (*location, "group", index))
                for index, child in enumerate(layer.group)
            )
        )
    if layer.part is not None:
        return _part_node(layer, is_item)
    if layer.arrow is not None:
        return _arrow_node(layer, layer.arrow)
    if layer.shape is not None:
        return Blob(
            _style(layer, is_item, "ink"), _members(layer.shape), layer.outline, layer.halo, layer.only
        )
    return _path_node(layer, is_item)


def _style(layer: Layer, is_item: bool, otherwise: Style) -> Style:
    if layer.style is not None:
        return layer.style
    return "accent" if is_item else otherwise


def _part_node(layer: Layer, is_item: bool) -> Node:
    name = layer.part or ""
    part = part_named(name)
    if part is None:
        raise ValueError(f"no part is named {name!r}; parts are {', '.join(part_names())}")
    arguments = dict(layer.args)
    if layer.style is not None:
        arguments["style"] = layer.style
    elif is_item and part.takes_style:
        arguments.setdefault("style", "accent")
    checked = part.arguments.model_validate(arguments)
    try:
        return part.draw(**{name: getattr(checked, name) for name in checked.model_fields_set})
    except (ArithmeticError, ValueError, IndexError) as error:
        raise ValueError(f"the part {name!r} cannot be drawn with these arguments") from error


def _arrow_node(layer: Layer, curve: Curve) -> Node:
    (path,) = curve_paths(curve)
    return arrow(
        path,
        width=layer.width or 4.6,
        head=layer.head or 11.0,
        is_double=layer.both,
        style=layer.style or "mark",
        halo=layer.halo,
    )


def _path_node(layer: Layer, is_item: bool) -> Node:
    """A line: with ``outline`` or ``casing`` it gets an ink edge or a gap on both sides."""
    if layer.path is None:
        raise ValueError("a layer wants a content")
    paths = curve_paths(layer.path)
    width = layer.width or DETAIL
    style = _style(layer, is_item, "ink")
    if layer.outline is None and style != "lining":
        lines: list[Node] = []
        if layer.casing:
            lines += [Stroke(path, width + 2 * layer.casing, "ground", role="halo") for path in paths]
        lines += [Stroke(path, width, style) for path in paths]
        return group(*lines)
    return Blob(style, tuple(Member(path, width) for path in paths), layer.outline, layer.casing or 0.0)


def _transform(layer: Layer) -> Affine:
    x, y = (layer.scale, layer.scale) if isinstance(layer.scale, float | int) else layer.scale
    turned = rotation(layer.rot) @ scaling(x, -y if layer.flip else y)
    if layer.about is None:
        return translation(*layer.at) @ turned
    return (
        translation(*layer.at)
        @ translation(*layer.about)
        @ turned
        @ translation(-layer.about[0], -layer.about[1])
    )
