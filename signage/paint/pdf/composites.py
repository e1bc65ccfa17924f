"""New glyphs made of several glyphs of a TrueType font (OpenType 1.9, table ``glyf``, composite glyphs).

A cluster of letters that is drawn by several glyphs becomes one glyph here, so that it can stand for its
text as a whole: that is what lets every reader of the file find the right text again.
"""

from __future__ import annotations

import struct
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from signage.ground.errors import RefusedError

_ARGUMENTS_ARE_WORDS = 0x0001
_ARGUMENTS_ARE_OFFSETS = 0x0002
_MORE_COMPONENTS = 0x0020

_FARTHEST = 0x7FFF
"""Font units from the origin; coordinates of the table ``glyf`` are 16 bits with a sign (FWORD)."""


class Part(NamedTuple):
    """A glyph of the font and its offset in font units."""

    glyph: int
    x: int
    y: int


class ClusterShape(NamedTuple):
    """What a cluster looks like: its parts in painting order and its advance in font units."""

    parts: tuple[Part, ...]
    advance: int


@dataclass(slots=True)
class _Outlines:
    """The tables of a subset that grow."""

    tables: dict[bytes, bytes]
    glyphs: bytearray
    offsets: list[int]
    metrics: list[tuple[int, int]]


def add_composites(font: bytes, shapes: Sequence[ClusterShape], new_glyph: Mapping[int, int]) -> bytes:
    """Append one glyph a shape; ``new_glyph`` maps glyphs of the shapes to those of this subset.

    The glyphs get the numbers after the last one, in the order of the shapes. Raises KeyError where the
    font has no TrueType outlines, RefusedError for a shape that is too large for the table.
    """
    outlines = _read(font)
    largest = 1
    for shape in shapes:
        bounds = _append(outlines, shape, new_glyph)
        outlines.metrics.append((shape.advance, bounds))
        largest = max(largest, len(shape.parts))
    tables = outlines.tables
    count = len(outlines.offsets) - 1
    tables[b"glyf"] = bytes(outlines.glyphs)
    tables[b"loca"] = struct.pack(f">{count + 1}I", *outlines.offsets)
    tables[b"hmtx"] = b"".join([struct.pack(">Hh", *metric) for metric in outlines.metrics])
    tables[b"head"] = _with(tables[b"head"], ">I", 8, 0)
    tables[b"head"] = _with(tables[b"head"], ">h", 50, 1)  # indexToLocFormat: long
    tables[b"hhea"] = _with(tables[b"hhea"], ">H", 34, count)  # numberOfHMetrics
    tables[b"maxp"] = _grown_maxima(tables[b"maxp"], count, largest)
    return _assemble(tables)


def glyph_count(font: bytes) -> int:
    """How many glyphs a font has (``maxp.numGlyphs``)."""
    return int(struct.unpack_from(">H", _tables(font)[b"maxp"], 4)[0])


def bounds_of_font(font: bytes) -> tuple[int, int, int, int]:
    """xMin, yMin, xMax and yMax of the table ``head``, in font units."""
    left, bottom, right, top = struct.unpack_from(">hhhh", _tables(font)[b"head"], 36)
    return left, bottom, right, top


def _read(font: bytes) -> _Outlines:
    tables = _tables(font)
    count = struct.unpack_from(">H", tables[b"maxp"], 4)[0]
    is_long = struct.unpack_from(">h", tables[b"head"], 50)[0] == 1
    if is_long:
        offsets = list(struct.unpack_from(f">{count + 1}I", tables[b"loca"]))
    else:
        offsets = [2 * half for half in struct.unpack_from(f">{count + 1}H", tables[b"loca"])]
    with_advance = struct.unpack_from(">H", tables[b"hhea"], 34)[0]
    widths = tables[b"hmtx"]
    metrics = [struct.unpack_from(">Hh", widths, 4 * i) for i in range(with_advance)]
    last = metrics[-1][0]
    bearings = struct.unpack_from(f">{count - with_advance}h", widths, 4 * with_advance)
    metrics += [(last, bearing) for bearing in bearings]
    return _Outlines(tables, bytearray(tables[b"glyf"][: offsets[-1]]), offsets, metrics)


def _append(outlines: _Outlines, shape: ClusterShape, new_glyph: Mapping[int, int]) -> int:
    """Add the record of one composite glyph; returns its left side bearing, which is its xMin."""
    inked: list[Part] = []
    boxes: list[tuple[int, int, int, int]] = []
    for part in shape.parts:
        glyph = new_glyph[part.glyph]
        start, end = outlines.offsets[glyph], outlines.offsets[glyph + 1]
        if start == end:
            continue
        left, bottom, right, top = struct.unpack_from(">hhhh", outlines.glyphs, start + 2)
        boxes.append((left + part.x, bottom + part.y, right + part.x, top + part.y))
        inked.append(Part(glyph, part.x, part.y))
    if not inked:
        outlines.offsets.append(len(outlines.glyphs))
        return 0
    lefts, bottoms, rights, tops = zip(*boxes, strict=True)
    if max(map(abs, (*lefts, *bottoms, *rights, *tops))) > _FARTHEST:
        message = "One letter of a text reaches farther than a font can say: too many marks stand on it."
        raise RefusedError(f"{message} Type the letter again with its own mark.")
    record = bytearray(struct.pack(">hhhhh", -1, min(lefts), min(bottoms), max(rights), max(tops)))
    for part in inked:
        more = _MORE_COMPONENTS if part is not inked[-1] else 0
        flags = _ARGUMENTS_ARE_WORDS | _ARGUMENTS_ARE_OFFSETS | more
        record += struct.pack(">HHhh", flags, part.glyph, part.x, part.y)
    record += bytes(-len(record) % 4)
    outlines.glyphs += record
    outlines.offsets.append(len(outlines.glyphs))
    return int(min(lefts))


def _grown_maxima(maxima: bytes, count: int, parts: int) -> bytes:
    """Table ``maxp`` 1.0: upper bounds that hold for the glyphs added."""
    points, contours, composite_points, composite_contours = struct.unpack_from(">HHHH", maxima, 6)
    elements, depth = struct.unpack_from(">HH", maxima, 28)
    grown = _with(maxima, ">H", 4, count)
    grown = _with(grown, ">H", 10, min(0xFFFF, max(points, composite_points) * parts))
    grown = _with(grown, ">H", 12, min(0xFFFF, max(contours, composite_contours) * parts))
    grown = _with(grown, ">H", 28, max(elements, parts))
    return _with(grown, ">H", 30, max(depth, 1) + 1)


def _with(table: bytes, layout: str, offset: int, value: int) -> bytes:
    changed = bytearray(table)
    struct.pack_into(layout, changed, offset, value)
    return bytes(changed)


def _tables(font: bytes) -> dict[bytes, bytes]:
    count = struct.unpack_from(">H", font, 4)[0]
    records = (struct.unpack_from(">4sIII", font, 12 + 16 * i) for i in range(count))
    return {tag: font[offset : offset + length] for tag, _, offset, length in records}


def _assemble(tables: Mapping[bytes, bytes]) -> bytes:
    """The font file: header, table records sorted by tag, tables padded to four bytes."""
    count = len(tables)
    power = count.bit_length() - 1
    search = 16 << power
    head = bytearray(struct.pack(">IHHHH", 0x00010000, count, search, power, 16 * count - search))
    body = bytearray()
    start = len(head) + 16 * count
    for tag in sorted(tables):
        table = tables[tag]
        padded = table + bytes(-len(table) % 4)
        checksum = sum(struct.unpack(f">{len(padded) // 4}I", padded)) & 0xFFFFFFFF
        head += struct.pack(">4sIII", tag, checksum, start + len(body), len(table))
        body += padded
    return bytes(head + body)
