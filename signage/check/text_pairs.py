"""Pairs of texts on a page whose ink lies in the same place."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from signage.drawing.marks import Page, TextMark, texts_of


@dataclass(frozen=True)
class Overlap:
    """Two texts and the size of the box that both cover, in millimetres."""

    first: TextMark
    second: TextMark
    width: float
    height: float

    def __str__(self) -> str:
        """Both texts and by how much they overlap."""
        return (
            f"{self.first.role} '{self.first.text}' and {self.second.role} '{self.second.text}' overlap by "
            f"{self.width:.1f} x {self.height:.1f} mm"
        )


def overlapping_texts(page: Page, tolerance: float) -> Iterator[Overlap]:
    """The pairs whose boxes of ink share more than the tolerance both ways, in millimetres."""
    texts = sorted(texts_of(page), key=lambda item: item[1].y)
    for index, (mark, box) in enumerate(texts):
        for other, bounds in texts[index + 1 :]:
            if bounds.y > box.bottom:
                break
            width, height = box.overlap(bounds)
            if width > tolerance and height > tolerance:
                yield Overlap(mark, other, width, height)
