"""The pictures of a library by name: those that ship with the programme, and those it has drawn itself."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cache, cached_property

from signage.drawing.marks import Form
from signage.ground.errors import WrongUsageError
from signage.ground.kept import Kept
from signage.model.messages import Message
from signage.pictograms.catalogue import known_scene
from signage.pictograms.kit.nodes import CompiledLayer
from signage.pictograms.palette import Palette
from signage.pictograms.picture import NOTHING_KEPT, Picture
from signage.pictograms.scene import Scene
from signage.pictograms.shipped import SCENE_FOLDER, digest_of_scene, shipped_names


@dataclass(frozen=True, eq=False)
class PictureSet:
    """The shipped pictures and a library's ``own`` ones, whose names are others.

    Every look-up raises WrongUsageError for a name that no picture has. What is made of a picture is made
    once: the same arguments give the same object, whichever sheet or language asks.
    """

    own: tuple[Picture, ...] = ()
    among: frozenset[str] | None = None
    """The only names that are known; None for all."""
    kept: Kept = NOTHING_KEPT
    """Where compiled pictures of earlier runs are."""

    @cached_property
    def _own(self) -> dict[str, Picture]:
        return {picture.scene.name: picture for picture in self.own}

    @cached_property
    def names(self) -> tuple[str, ...]:
        """The names of all pictures in alphabetical order."""
        known = {*shipped_names(), *self._own}
        return tuple(sorted(known if self.among is None else known & self.among))

    @cached_property
    def _known(self) -> frozenset[str]:
        return frozenset(self.names)

    @cached_property
    def own_names(self) -> tuple[str, ...]:
        """The names of the pictures that the library has drawn itself, in alphabetical order."""
        return tuple(name for name in self.names if name in self._own)

    def picture(self, name: str) -> Picture:
        """The picture of a name."""
        if name not in self._known:
            raise WrongUsageError(f"no picture is named {name!r}; pictures are {', '.join(self.names)}")
        own = self._own.get(name)
        return _shipped_picture(name) if own is None else own

    def only(self, names: Iterable[str]) -> PictureSet:
        """The same pictures without those of other names: what is not there cannot be shown."""
        return replace(self, among=frozenset(names))

    def scene(self, name: str) -> Scene:
        """The scene that a picture is drawn from."""
        return self.picture(name).scene

    def compiled(self, name: str, is_mirrored: bool = False) -> tuple[CompiledLayer, ...]:
        """The layers of a picture, 96 units a side."""
        return self.picture(name).compiled(is_mirrored, self.kept)

    def form(self, name: str, palette: Palette, is_mirrored: bool = False) -> Form:
        """A picture in the colours of a palette; see ``Picture.form``."""
        return self.picture(name).form(palette, is_mirrored, self.kept)

    def fingerprint(self, name: str) -> str:
        """SHA-256 of what a reader sees and hears of a picture."""
        return self.picture(name).fingerprint

    def source_fingerprint(self, name: str) -> str:
        """SHA-256 of what a picture is drawn from: whatever is made of it may be kept under this.

        A shipped picture is known by the bytes of its file, so that its scene need not be read.
        """
        is_shipped = name in self._known and name not in self._own
        return digest_of_scene(name) if is_shipped else self.picture(name).source_fingerprint

    def messages(self, names: Iterable[str]) -> tuple[Message, ...]:
        """The sentences that stand for pictures where they are not seen, to translate."""
        return tuple(self.picture(name).message for name in names)


SHIPPED_PICTURES = PictureSet()
"""The pictures that ship with the programme; a file of them is read when its picture is asked for."""


@cache
def _shipped_picture(name: str) -> Picture:
    known = known_scene(name)
    if known is not None:
        return Picture(known.scene, known)
    from signage.pictograms.scenes import load_scene  # noqa: PLC0415 - the drawing kit is seldom needed

    return Picture(load_scene(SCENE_FOLDER / f"{name}.yaml"))
