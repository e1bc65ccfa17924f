"""The compiled picture against the same operations painted one over the other by another renderer."""

import io

import pytest
from outside_readers import outside

from signage.pictograms.palette import DON
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

PIXELS = 480
LARGEST_SHARE = 0.012
"""Edges differ by a pixel's rounding, and ink stays 0.18 units off cut edges by design."""


def outline(canvas, path):
    drawn = canvas.beginPath()
    for segment in path:
        add = {"M": drawn.moveTo, "L": drawn.lineTo, "C": drawn.curveTo, "Z": drawn.close}
        add[segment[0]](*segment[1:])
    return drawn


def raster(paint):
    canvas_module = outside("reportlab.pdfgen.canvas")
    pdfium = outside("pypdfium2")
    stream = io.BytesIO()
    canvas = canvas_module.Canvas(stream, pagesize=(96, 96))
    canvas.translate(0, 96)
    canvas.scale(1, -1)
    canvas.setLineCap(1)
    canvas.setLineJoin(1)
    paint(canvas)
    canvas.save()
    document = pdfium.PdfDocument(stream.getvalue())
    return document[0].render(scale=PIXELS / 96).to_numpy()[:, :, :3].astype(int)


def painted(operations):
    colour = outside("reportlab.lib.colors").HexColor

    def paint(canvas):
        for operation in operations:
            canvas.saveState()
            for members in operation.within:
                clip = canvas.beginPath()
                assert all(member.width == 0 for member in members)
                for member in members:
                    for segment in member.path:
                        add = {"M": clip.moveTo, "L": clip.lineTo, "C": clip.curveTo, "Z": clip.close}
                        add[segment[0]](*segment[1:])
                canvas.clipPath(clip, stroke=0, fill=0, fillMode=1)
            fill = "#FFFFFF" if operation.pigment == "ground" else DON.fill(operation.pigment)
            canvas.setFillColor(colour(fill))
            canvas.setStrokeColor(colour(fill))
            canvas.setLineWidth(operation.width)
            canvas.setLineCap(0 if operation.has_butt_caps else 1)
            canvas.drawPath(
                outline(canvas, operation.path),
                stroke=int(operation.width > 0),
                fill=int(operation.is_filled),
                fillMode=1,
            )
            canvas.restoreState()

    return raster(paint)


def filled(layers):
    colour = outside("reportlab.lib.colors").HexColor

    def paint(canvas):
        for pigment, path in layers:
            canvas.setFillColor(colour(DON.fill(pigment)))
            canvas.drawPath(outline(canvas, path), stroke=0, fill=1, fillMode=1)

    return raster(paint)


@pytest.mark.parametrize(
    "name", ["goggles-on", "hood-off", "respirator-off", "rub-outer-gloves", "apron-off"]
)
def test_the_compiled_picture_looks_like_the_painted_one(name):
    differing = (
        abs(painted(PICTURES.scene(name).operations) - filled(PICTURES.compiled(name))).max(axis=2) > 96
    )
    assert differing.mean() < LARGEST_SHARE
