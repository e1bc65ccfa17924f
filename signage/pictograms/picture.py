"""A scene as a drawing to place on sheets."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import asdict, dataclass, field
from functools import cached_property

from signage.drawing.marks import Form, PathMark
from signage.ground.fingerprint import fingerprint
from signage.ground.geometry import mirroring
from signage.ground.kept import Kept
from signage.model.messages import Message, MessageRole
from signage.pictograms.catalogue import Known, digest_of_compiler, known_layers, layers_of_json
from signage.pictograms.kit.nodes import CANVAS, CompiledLayer, Operation, flatten, group
from signage.pictograms.palette import Palette
from signage.pictograms.scene import Scene

NOTHING_KEPT = Kept()


@dataclass(frozen=True, eq=False)
class Picture:
    """A scene and what is made of it, each made once and then the same object: layers, forms, fingerprint.

    ``known`` is what the catalogue of shipped scenes says of it.
    """

    scene: Scene
    known: Known | None = None
    _layers: dict[bool, tuple[CompiledLayer, ...]] = field(init=False, default_factory=dict, repr=False)
    _forms: dict[tuple[Palette, bool], Form] = field(init=False, default_factory=dict, repr=False)

    def compiled(self, is_mirrored: bool = False, kept: Kept = NOTHING_KEPT) -> tuple[CompiledLayer, ...]:
        """The layers of the scene, 96 units a side; those that ship, or from an earlier run where kept."""
        if is_mirrored not in self._layers:
            passes = self.passes_fingerprint(is_mirrored)
            layers = known_layers(self.scene.name, passes) if self.known is not None else None
            if layers is None:
                layers = _compiled(passes, lambda: self._passes(is_mirrored), kept)
            self._layers[is_mirrored] = layers
        return self._layers[is_mirrored]

    def passes_fingerprint(self, is_mirrored: bool) -> str:
        """SHA-256 of the painting passes, as drawn or mirrored."""
        if self.known is not None:
            return self.known.passes[is_mirrored]
        return fingerprint([operation_record(operation) for operation in self._passes(is_mirrored)])

    def _passes(self, is_mirrored: bool) -> tuple[Operation, ...]:
        nodes = self.scene.nodes
        if is_mirrored:
            nodes = (group(*nodes, transform=mirroring(CANVAS / 2)),)
        return tuple(flatten(nodes))

    def form(self, palette: Palette, is_mirrored: bool = False, kept: Kept = NOTHING_KEPT) -> Form:
        """The picture as filled paths with transparent gaps, 96 units a side.

        ``is_mirrored`` asks for the drawing of a right-to-left sheet; scenes whose rule is ``never`` stay
        as they are.
        """
        key = (palette, is_mirrored and self.scene.mirror == "with-layout")
        if key not in self._forms:
            layers = self.compiled(key[1], kept)
            marks = tuple(PathMark(path, fill=palette.fill(pigment)) for pigment, path in layers)
            suffix = "-mirrored" if key[1] else ""
            self._forms[key] = Form(f"picture-{self.scene.name}-{palette.name}{suffix}", CANVAS, marks)
        return self._forms[key]

    @cached_property
    def fingerprint(self) -> str:
        """SHA-256 of what a reader sees and hears of the picture: paint, mirroring, sentence."""
        if self.known is not None:
            return self.known.fingerprint
        scene = self.scene
        return fingerprint(
            {
                "alternative": scene.alternative,
                "mirror": scene.mirror,
                "handed": scene.handed,
                "operations": [operation_record(operation) for operation in scene.operations],
            }
        )

    @cached_property
    def source_fingerprint(self) -> str:
        """SHA-256 of all that a sheet, a page or a rule can take from the scene, but for its place."""
        scene = self.scene
        return fingerprint(
            {
                "name": scene.name,
                "theme": scene.theme,
                "focus": scene.focus,
                "gloss": asdict(scene.gloss),
                "cropped": sorted(scene.cropped),
                "alike": sorted(scene.alike),
                "seen": self.fingerprint,
            }
        )

    @property
    def message(self) -> Message:
        """The sentence that stands for the picture where it is not seen, to translate."""
        name, scene = self.scene.name, self.scene
        return Message(f"picture/{name}", scene.alternative, MessageRole.PICTURE, scene.place, picture=name)


def _compiled(
    passes: str, operations: Callable[[], tuple[Operation, ...]], kept: Kept
) -> tuple[CompiledLayer, ...]:
    """The layers of painting passes, from an earlier run where they have been compiled before.

    ``passes`` is the fingerprint of the passes, which are asked for only where there are no layers.
    """
    import pathops  # noqa: PLC0415 - the outlines of most pictures ship

    key = fingerprint([digest_of_compiler(), pathops.__version__, passes])
    found = kept.find_json(key)
    if found is not None:
        return layers_of_json(found)
    from signage.pictograms.compile import compile_operations  # noqa: PLC0415 - seldom needed

    layers = compile_operations(operations())
    kept.keep_json(key, layers)
    return layers


def operation_record(operation: Operation) -> list[object]:
    """An operation as plain values with coordinates at 0.01 unit."""

    def numbers(path: tuple[tuple[str | float, ...], ...]) -> list[object]:
        return [
            [round(value, 2) + 0.0 if isinstance(value, float | int) else value for value in segment]
            for segment in path
        ]

    return [
        numbers(operation.path),
        operation.pigment,
        round(operation.width, 2),
        operation.is_filled,
        operation.has_butt_caps,
        [[[numbers(member.path), round(member.width, 2)] for member in clip] for clip in operation.within],
    ]
