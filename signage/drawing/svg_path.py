"""Paths and numbers as SVG writes them."""

from __future__ import annotations

from signage.ground.geometry import Path


def path_data(path: Path, decimals: int = 3) -> str:
    """The ``d`` attribute of a path (SVG 2, section 9.3), with absolute commands."""
    return "".join(
        f"{segment[0]}"
        f"{' '.join([svg_number(value, decimals) for value in segment[1:] if not isinstance(value, str)])}"
        for segment in path
    )


def svg_number(value: float, decimals: int = 3) -> str:
    """A number without needless zeros; three decimals of a millimetre are a micrometre."""
    return f"{round(value, decimals) + 0.0:.{decimals}f}".rstrip("0").rstrip(".")
