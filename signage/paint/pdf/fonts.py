"""Embedded fonts: Type0 over CIDFontType2 with Identity-H (ISO 32000-1, section 9.7).

A character identifier (CID) stands for a pair: what a cluster looks like, and the text it stands for.
The same shape with other text is another CID, so the way back from the page to the text is never a guess.
"""

from __future__ import annotations

import hashlib
import struct
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any, NamedTuple

import uharfbuzz

from signage.ground.glyphs import FontKey, Glyph
from signage.paint.pdf import syntax
from signage.paint.pdf.composites import ClusterShape, Part, add_composites, bounds_of_font, glyph_count
from signage.paint.pdf.reportlab_adapter import PdfFile, pack
from signage.text.fonts import Face, face

_UNUSED_TABLES = (
    "BASE", "DSIG", "GDEF", "GPOS", "GSUB", "MATH", "MVAR", "OS/2", "STAT", "VORG", "cmap", "gasp", "kern",
    "name", "post", "vhea", "vmtx",
)  # fmt: skip
"""Tables that a CIDFontType2 program does without (ISO 32000-1, table 126)."""

_CMAP_HEAD = """/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo 3 dict dup begin
/Registry (Adobe) def
/Ordering (UCS) def
/Supplement 0 def
end def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange"""

_CMAP_FOOT = """endcmap
CMapName currentdict /CMap defineresource pop
end
end
"""

_ENTRIES_PER_BLOCK = 100
"""A block of a CMap holds at most a hundred entries (Adobe Technical Note 5014)."""

_LARGEST_KERN = 0.1
"""Ems. A single glyph whose advance is changed by more becomes a glyph of its own with that advance:
readers of the file would take the correction for a blank between words."""

_SYMBOLIC = 4
_BOLD_STEM = 140
_REGULAR_STEM = 80
"""Stem widths for viewers that must stand in for the font; estimates, since the font is embedded."""


@dataclass(frozen=True, slots=True)
class _Program:
    """A font program ready to embed, and the glyph in it of every shape."""

    packed: bytes
    length: int
    glyph_of: dict[ClusterShape, int]
    bounds: tuple[int, int, int, int]


class ClusterCode(NamedTuple):
    """How a cluster is shown: its CID in hexadecimal, and the shifts before and after it in font units."""

    cid: str
    before: int
    after: int


class EmbeddedFont:
    """One font of the document: hands out CIDs while pages are painted, and embeds what was used."""

    def __init__(self, key: FontKey, resource: str) -> None:
        self.resource = resource
        self.face: Face = face(key)
        self._key = key
        self._cids: dict[tuple[ClusterShape, str], int] = {}
        self._codes: dict[tuple[object, ...], ClusterCode] = {}

    def code_of_one(self, glyph: Glyph, text: str) -> ClusterCode:
        """The code of a cluster of one glyph; they are nearly all."""
        key = (text, glyph.id, glyph.advance, glyph.x_offset, glyph.y_offset)
        return self._codes.get(key) or self._new_code(key, (glyph,), text)

    def code(self, glyphs: Sequence[Glyph], text: str) -> ClusterCode:
        """The code of the glyphs of one cluster that stands for a text."""
        if len(glyphs) == 1:
            return self.code_of_one(glyphs[0], text)
        key = (text, *[(glyph.id, glyph.advance, glyph.x_offset, glyph.y_offset) for glyph in glyphs])
        return self._codes.get(key) or self._new_code(key, glyphs, text)

    def _new_code(self, key: tuple[object, ...], glyphs: Sequence[Glyph], text: str) -> ClusterCode:
        shape, before, after = self._shape(glyphs)
        cid = self._cids.setdefault((shape, text), len(self._cids) + 1)  # 0 is the missing glyph
        found = self._codes[key] = ClusterCode(f"{cid:04X}", before, after)
        return found

    def _shape(self, glyphs: Sequence[Glyph]) -> tuple[ClusterShape, int, int]:
        """The shape of a cluster, and the shifts before and after it."""
        units = self.face.units_per_em
        first = glyphs[0]
        if len(glyphs) == 1 and not first.y_offset:
            advance, own_advance = round(first.advance * units), self._own_advance(first.id)
            if abs(advance - own_advance) <= _LARGEST_KERN * units:
                shift = round(first.x_offset * units)
                shape = ClusterShape((Part(first.id, 0, 0),), own_advance)
                return shape, shift, advance - own_advance - shift
        pen = 0
        parts: list[Part] = []
        for glyph in glyphs:
            parts.append(Part(glyph.id, pen + round(glyph.x_offset * units), round(glyph.y_offset * units)))
            pen += round(glyph.advance * units)
        width = max(pen, 0)
        return ClusterShape(tuple(parts), width), 0, pen - width

    def _own_advance(self, glyph: int) -> int:
        """The advance of a glyph by the font's own table."""
        return int(self.face.font.get_glyph_h_advance(glyph))

    def embed(self, file: PdfFile) -> int:
        """Write the font; returns the number of its dictionary."""
        shapes = [shape for shape, _ in self._cids]
        program = _program(self.face, tuple(dict.fromkeys(shapes)))
        widths = [syntax.number(self._thousandths(shape.advance), 2) for shape in shapes]
        font_name = syntax.name(self._font_name())
        descendant = {
            "Type": "/Font",
            "Subtype": "/CIDFontType2",
            "BaseFont": font_name,
            "CIDSystemInfo": "<</Registry (Adobe) /Ordering (Identity) /Supplement 0>>",
            "FontDescriptor": syntax.reference(self._add_descriptor(file, font_name, program)),
            "W": f"[1 {syntax.array(widths)}]",
            "CIDToGIDMap": syntax.reference(file.add_stream(_glyph_map(shapes, program))),
        }
        font = {
            "Type": "/Font",
            "Subtype": "/Type0",
            "BaseFont": font_name,
            "Encoding": "/Identity-H",
            "DescendantFonts": syntax.array([syntax.reference(file.add(syntax.dictionary(descendant)))]),
            "ToUnicode": syntax.reference(file.add_stream(self._to_unicode())),
        }
        return file.add(syntax.dictionary(font))

    def _add_descriptor(self, file: PdfFile, font_name: str, program: _Program) -> int:
        extents = self.face.font.get_font_extents("ltr")
        capitals = self.face.font.get_metric_position_with_fallback(uharfbuzz.OTMetricsTag.CAP_HEIGHT)
        program_number = file.add_stream(program.packed, {"Length1": str(program.length)}, is_packed=True)
        heights = {
            "Ascent": extents.ascender,
            "Descent": extents.descender,
            "CapHeight": capitals,
        }
        entries = {
            "Type": "/FontDescriptor",
            "FontName": font_name,
            "Flags": str(_SYMBOLIC),
            "FontBBox": syntax.array(syntax.number(self._thousandths(bound), 0) for bound in program.bounds),
            "ItalicAngle": "0",
            **{key: syntax.number(self._thousandths(height), 0) for key, height in heights.items()},
            "StemV": str(_BOLD_STEM if self._key.weight >= 600 else _REGULAR_STEM),
            "FontFile2": syntax.reference(program_number),
        }
        return file.add(syntax.dictionary(entries))

    def _font_name(self) -> str:
        """The name with the six-letter tag of a subset (section 9.6.4), made from what the subset holds."""
        digest = hashlib.sha256(repr(list(self._cids)).encode()).digest()
        tag = "".join(chr(ord("A") + byte % 26) for byte in digest[:6])
        family = self._key.file.split("[")[0].removesuffix(".ttf")
        return f"{tag}+{family}-{self._key.weight}"

    def _thousandths(self, units: float) -> float:
        """Font units to thousandths of an em, the unit of glyph space."""
        return units * 1000 / self.face.units_per_em

    def _to_unicode(self) -> bytes:
        """The CMap from CIDs to text; blanks stand between its numbers, for readers that need them."""
        entries = [
            f"<{cid:04X}> <{text.encode('utf-16-be').hex().upper()}>" for (_, text), cid in self._cids.items()
        ]
        lines = [_CMAP_HEAD]
        for block in _blocks(entries):
            lines += [f"{len(block)} beginbfchar", *block, "endbfchar"]
        lines.append(_CMAP_FOOT)
        return "\n".join(lines).encode()


def _blocks(entries: list[str]) -> Iterator[list[str]]:
    for start in range(0, len(entries), _ENTRIES_PER_BLOCK):
        yield entries[start : start + _ENTRIES_PER_BLOCK]


def _glyph_map(shapes: list[ClusterShape], program: _Program) -> bytes:
    """Two bytes a CID, from 0 (section 9.7.4.2)."""
    return struct.pack(f">{len(shapes) + 1}H", 0, *(program.glyph_of[shape] for shape in shapes))


@lru_cache(maxsize=512)
def _program(opened: Face, shapes: tuple[ClusterShape, ...]) -> _Program:
    """The subset of a font that draws the shapes: copies of a sheet on other papers share it."""
    subset, new_glyph = _subset(opened, {part.glyph for shape in shapes for part in shape.parts})
    glyph_of: dict[ClusterShape, int] = {}
    composites: list[ClusterShape] = []
    next_glyph = glyph_count(subset)
    for shape in shapes:
        if _is_plain(opened, shape):
            glyph_of[shape] = new_glyph[shape.parts[0].glyph]
        else:
            glyph_of[shape] = next_glyph + len(composites)
            composites.append(shape)
    font = add_composites(subset, composites, new_glyph) if composites else subset
    return _Program(pack(font), len(font), glyph_of, bounds_of_font(font))


def _is_plain(opened: Face, shape: ClusterShape) -> bool:
    """Whether the shape is one glyph of the font as it stands there."""
    if len(shape.parts) != 1:
        return False
    (part,) = shape.parts
    return part == Part(part.glyph, 0, 0) and shape.advance == int(
        opened.font.get_glyph_h_advance(part.glyph)
    )


def _subset(opened: Face, glyphs: set[int]) -> tuple[bytes, dict[int, int]]:
    """HarfBuzz's subset at the weight of the face, and the map from old to new glyphs."""
    source: Any = opened.font.face
    wanted = uharfbuzz.SubsetInput()
    flags = uharfbuzz.SubsetFlags
    wanted.flags = flags.NO_LAYOUT_CLOSURE | flags.NO_BIDI_CLOSURE | flags.NO_HINTING | flags.NOTDEF_OUTLINE
    wanted.unicode_set.clear()
    wanted.glyph_set.update(sorted(glyphs))
    wanted.drop_table_tag_set.update([int.from_bytes(tag.encode(), "big") for tag in _UNUSED_TABLES])
    for axis in source.axis_infos:
        if axis.tag == "wght":
            wanted.pin_axis_location(source, axis.tag, opened.key.weight)
        else:
            wanted.pin_axis_to_default(source, axis.tag)
    plan = uharfbuzz.SubsetPlan(source, wanted)
    new_glyph = dict(plan.old_to_new_glyph_mapping)
    return bytes(plan.execute().blob.data), new_glyph
