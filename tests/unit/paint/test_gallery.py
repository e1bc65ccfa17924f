from io import BytesIO

from PIL import Image

from signage.paint.gallery import paint_gallery
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

NAMES = ("apron-on", "apron-off", "hand-rub", "hood-on", "hood-off", "sit-down", "stand-up")


def test_a_gallery_is_a_small_png_with_every_picture():
    data = paint_gallery(PICTURES, NAMES)
    image = Image.open(BytesIO(data))
    assert (image.format, image.width) == ("PNG", 1100)
    assert len(data) < 60_000


def test_it_is_the_same_on_every_run():
    assert paint_gallery(PICTURES, NAMES[:2]) == paint_gallery(PICTURES, NAMES[:2])


def test_themes_keep_their_colours():
    colours = Image.open(BytesIO(paint_gallery(PICTURES, ["apron-on"]))).convert("RGB").getcolors(10**6)
    blue = sum(count for count, (red, _, blue) in colours if blue > red + 80)
    assert blue > 1000
