"""Two libraries open in one process never see each other: neither their pictures nor their fonts."""

import hashlib
import json
import subprocess
import sys
from datetime import date
from itertools import chain
from pathlib import Path

import pytest
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.ttGlyphPen import TTGlyphPen

from signage.ground.errors import RefusedError
from signage.load.starter import starter_files
from signage.paint.pdf.document import paint_pdf
from signage.paint.svg import paint_svg
from signage.produce.check import check_picture, check_request
from signage.produce.publish import publication_of, site_of
from signage.produce.requests import SheetRequest, compose_request
from signage.project import open_project
from signage.words.coverage import coverage_problems

DAY = date(2026, 11, 28)
SIGN = "\U0001f9fc"
"""A piece of soap (Unicode: BAR OF SOAP), which no font of the programme has."""

POSTER = SheetRequest("gloves", "en", "poster", "put-on", "A4")

SCENE = """\
theme: don
focus: card
gloss: {who: wearer, does: show, what: a card}
alt: A hand holds up a card.
layers:
  - {id: hand, part: hand-open, at: [48, 80], args: {arm: 10}}
  - {id: card, part: card, at: [48, HEIGHT]}
"""


def write_library(folder, height, width=0):
    """The starter library with a picture and, where it has a width, a font of its own for one sign."""
    for name, data in starter_files(DAY).items():
        file = folder / name
        file.parent.mkdir(parents=True, exist_ok=True)
        drawn = data.replace(b"picture: inner-glove-on", b"picture: our-card")
        file.write_bytes(drawn.replace(b"then let them dry.", f"then let them dry {SIGN}.".encode()))
    (folder / "content/scenes").mkdir()
    (folder / "content/scenes/our-card.yaml").write_text(SCENE.replace("HEIGHT", str(height)))
    if width:
        (folder / "content/fonts").mkdir()
        write_font(folder / "content/fonts/Ward.ttf", width)
    return folder


def write_font(file, width):
    """A font of one sign: a box that is so many thousandths of an em wide."""
    pen = TTGlyphPen(None)
    pen.moveTo((50, 0))
    for corner in ((50, 700), (width - 50, 700), (width - 50, 0)):
        pen.lineTo(corner)
    pen.closePath()
    box = pen.glyph()
    made = FontBuilder(1000)
    made.setupGlyphOrder([".notdef", "soap"])
    made.setupCharacterMap({ord(SIGN): "soap"})
    made.setupGlyf({".notdef": box, "soap": box})
    made.setupHorizontalMetrics({".notdef": (width, 50), "soap": (width, 50)})
    made.setupHorizontalHeader(ascent=800, descent=-200)
    made.setupOS2()
    made.setupPost()
    made.save(file)


def looks(project):
    """What a library gives, piece by piece: codes, findings, sheets and pages."""

    def digest(data):
        return hashlib.sha256(data).hexdigest()

    yield "code", project.revision(project.library.protocols["gloves"], "en")
    for request in (POSTER, SheetRequest("gloves", "en", "pictures", "", "A4")):
        sheet = compose_request(project, request)
        yield f"PDF of {request.kind}", digest(paint_pdf(sheet))
        yield (
            f"SVG of {request.kind}",
            digest("".join(paint_svg(page, "", "en") for page in sheet.pages).encode()),
        )
    words = list(coverage_problems(project.library, project.messages, project.locales, project.fonts))
    drawn = [*check_picture(project, "our-card"), *check_request(project, POSTER)]
    yield "findings", [f"{problem.code} {problem.message}" for problem in (*words, *drawn)]
    try:
        site = site_of(project, publication_of(project, DAY)[0])
        yield "pages", {name: digest(data) for name, data in site.files.items()}
    except RefusedError as refusal:
        yield "pages", str(refusal)


def open_library(folder):
    return open_project(folder / "content", folder / "locales")


def looks_alone(folder):
    """What the library gives in a process that has opened no other."""
    command = [sys.executable, __file__, str(folder)]
    return json.loads(subprocess.run(command, stdout=subprocess.PIPE, check=True, text=True).stdout)


@pytest.fixture
def folders(tmp_path):
    return (
        write_library(tmp_path / "first", height=28, width=600),
        write_library(tmp_path / "second", height=40, width=900),
        write_library(tmp_path / "third", height=34),
    )


def test_libraries_side_by_side_give_what_each_gives_alone(folders):
    first_alone, second_alone, third_alone = map(looks_alone, folders)
    for name in ("code", "PDF of poster", "SVG of poster", "PDF of pictures"):
        assert len({each[name] for each in (first_alone, second_alone, third_alone)}) == 3, name
    assert any(SIGN in finding for finding in third_alone["findings"])
    assert not any(SIGN in finding for finding in first_alone["findings"])

    first, second = map(open_library, folders[:2])
    steps = list(chain.from_iterable(zip(looks(first), looks(second), strict=True)))
    assert dict(steps[::2]) == first_alone
    assert dict(steps[1::2]) == second_alone

    third = open_library(folders[2])
    assert dict(looks(third)) == third_alone
    assert dict(looks(first)) == first_alone
    assert dict(looks(open_library(folders[1]))) == second_alone


if __name__ == "__main__":
    sys.stdout.write(json.dumps(dict(looks(open_library(Path(sys.argv[1]))))))
