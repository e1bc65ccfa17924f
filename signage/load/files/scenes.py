"""The scenes of a content folder: their names, and whether they are YAML at all.

What a scene means is the business of the pictograms; here a file is held to the same rules of size,
encoding and syntax as every other file of the content.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from pathlib import Path

from signage.ground.place import Place
from signage.ground.problem import Problem
from signage.load import faults
from signage.load.file_text import shown_path
from signage.load.kinds import IDENTIFIER
from signage.load.suggestion import shorten
from signage.load.yaml.reader import read_yaml

LARGEST_SCENE = 64_000
"""Bytes; the longest scene that ships has 2,500."""


def scene_problems(files: Sequence[Path], shipped: Collection[str]) -> Iterator[Problem]:
    """Problems of syntax and of names; ``shipped`` are the names of the pictures of the programme."""
    for file in files:
        place = Place(shown_path(file))
        if _size(file) > LARGEST_SCENE:
            message = (
                f"{place} has {_size(file) / 1e3:.0f} kB; a scene has at most {LARGEST_SCENE / 1e3:.0f} kB."
            )
            yield faults.TOO_LARGE.problem(
                message, place, hint="Draw with fewer layers and points: docs/pictures.md."
            )
        else:
            yield from read_yaml(file)
        if IDENTIFIER.fullmatch(file.stem) is None:
            message = f"The file name '{shorten(file.stem)}' is not written as the name of a picture."
            yield faults.MALFORMED_NAME.problem(message, place)
        elif file.stem in shipped:
            message = f"A picture that ships with the programme is named '{file.stem}' already."
            hint = f"Give the file another name, such as 'our-{file.stem}.yaml'."
            yield faults.REPEATED_KEY.problem(message, place, hint=hint)


def _size(file: Path) -> int:
    """The bytes of a file; none where it cannot be looked at, which reading it will tell."""
    try:
        return file.stat().st_size
    except OSError:
        return 0
