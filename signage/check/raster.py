"""Rasters of composed pages, for rules that look at grey."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from signage.check.rule import SheetSubject
from signage.ground.geometry import Box

DOTS_PER_INCH = 100


@dataclass(frozen=True)
class Raster:
    """A grey page, one byte a pixel, with its margin in millimetres."""

    width: int
    height: int
    pixels: bytes
    margin: float
    dots_per_mm: float = DOTS_PER_INCH / 25.4

    def pixel_count(self, box: Box | None = None) -> int:
        """How many pixels lie in a box or inside the margins."""
        first, last, rows = self._bounds(box)
        return max(0, last - first) * len(rows)

    def _region(self, box: Box | None) -> bytes:
        first, last, rows = self._bounds(box)
        return b"".join(self.pixels[row * self.width + first : row * self.width + last] for row in rows)

    def _bounds(self, box: Box | None) -> tuple[int, int, range]:
        inset = self.margin * self.dots_per_mm
        left, top, right, bottom = inset, inset, self.width - inset, self.height - inset
        if box is not None:
            left, top, right, bottom = (v * self.dots_per_mm for v in (box.x, box.y, box.right, box.bottom))
        first, last = max(0, round(left)), min(self.width, round(right))
        return first, last, range(max(0, round(top)), min(self.height, round(bottom)))

    def share_lighter_than(self, grey: int, box: Box | None = None) -> float:
        """The share of pixels at or above a grey (0 black to 255 white) in a box or inside the margins."""
        region = self._region(box)
        lighter = region.translate(bytes(value >= grey for value in range(256)))
        return lighter.count(1) / len(region) if region else 0.0

    def share_darker_than(self, grey: int, box: Box | None = None) -> float:
        """The share of pixels below a grey."""
        return 1.0 - self.share_lighter_than(grey, box)


def rasters_of(subject: SheetSubject) -> tuple[Raster, ...]:
    """The pages of the subject in grey, painted once a subject."""
    if "rasters" not in subject.cache:
        subject.cache["rasters"] = _paint(subject)
    return cast("tuple[Raster, ...]", subject.cache["rasters"])


def _paint(subject: SheetSubject) -> tuple[Raster, ...]:
    import pypdfium2  # noqa: PLC0415 - only rules of grey need it

    from signage.paint.pdf.document import paint_pdf  # noqa: PLC0415 - the same

    document = pypdfium2.PdfDocument(paint_pdf(subject.sheet))
    found: list[Raster] = []
    for index, page in enumerate(subject.sheet.pages):
        image = document[index].render(scale=DOTS_PER_INCH / 72).to_pil().convert("L")
        found.append(Raster(image.width, image.height, image.tobytes(), page.margin))
    return tuple(found)
