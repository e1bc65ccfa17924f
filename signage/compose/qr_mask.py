"""Which of the eight masks a QR code takes (ISO/IEC 18004, 7.8.3: the one with the lowest penalty).

A symbol is one whole number here, a bit a module, row after row, the first module highest: a few operations
on such a number look at all modules at once. Horizontal features are sought in the rows, vertical ones in
the columns, which are a number of their own.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache, reduce
from itertools import cycle, islice
from operator import and_
from typing import NamedTuple

MASKS = range(8)

_PERIOD = 12
"""Rows and columns after which every mask repeats (table 10: remainders by 2, 3, 4 and 6)."""

_RUN, _RUN_POINTS = 5, 3
_BLOCK_POINTS = 3
_FINDER_POINTS = 40
_SHARE_POINTS = 10
"""Table 11: N1 for a run of five, one more for each further module; N2; N3; N4."""

_FINDERS = ("10111010000", "00001011101")
"""What looks like a finder pattern, with four light modules after or before it."""


class Symbol(NamedTuple):
    """The modules of a symbol as rows and as columns."""

    rows: int
    columns: int

    def changed(self, other: Symbol) -> Symbol:
        """Every module turned round that is dark in the other symbol."""
        return Symbol(self.rows ^ other.rows, self.columns ^ other.columns)

    def within(self, other: Symbol) -> Symbol:
        """The modules that are dark in both."""
        return Symbol(self.rows & other.rows, self.columns & other.columns)


def symbol_of(modules: Sequence[Sequence[object]]) -> Symbol:
    """The symbol of modules row by row; what is true is dark."""
    rows = [bytes(map(bool, row)) for row in modules]
    columns = [bytes(column) for column in zip(*rows, strict=True)]
    return Symbol(_number_of(rows), _number_of(columns))


def _number_of(lines: list[bytes]) -> int:
    return int(b"".join(lines).translate(_DIGITS), 2)


_DIGITS = bytes(range(48, 50)) + bytes(254)


@cache
def mask_of(mask: int, side: int) -> Symbol:
    """The modules that a mask turns round in a symbol without anything else, by the library's formula."""
    from qrcode.util import mask_func  # noqa: PLC0415 - only sheets with a code need it

    turns = mask_func(mask)
    tile = [[turns(row, column) for column in range(_PERIOD)] for row in range(_PERIOD)]
    lines = [list(islice(cycle(row), side)) for row in tile]
    return symbol_of(list(islice(cycle(lines), side)))


def penalty(symbol: Symbol, side: int) -> int:
    """The penalty of a whole symbol (table 11)."""
    found = sum(_points_of_lines(lines, side) for lines in symbol) + _points_of_blocks(symbol.rows, side)
    share = symbol.rows.bit_count() / side**2
    return found + int(abs(share * 100 - 50) / 5) * _SHARE_POINTS


def _points_of_lines(lines: int, side: int) -> int:
    """Runs of one colour, and what looks like a finder pattern."""
    same = _same_as_next(lines, side)
    fifth = reduce(and_, (same >> step for step in range(_RUN - 1)))
    runs = fifth & ~(fifth << 1)
    points = fifth.bit_count() + (_RUN_POINTS - 1) * runs.bit_count()
    colours = ~lines, lines
    for finder in _FINDERS:
        starts = _places(side, len(finder) - 1)
        for step, colour in enumerate(finder):
            starts &= colours[int(colour)] >> step
        points += _FINDER_POINTS * starts.bit_count()
    return points


def _points_of_blocks(rows: int, side: int) -> int:
    """Two by two modules of one colour."""
    same = _same_as_next(rows, side)
    blocks = same & (same >> side) & ~(rows ^ (rows >> side))
    return _BLOCK_POINTS * blocks.bit_count()


def _same_as_next(lines: int, side: int) -> int:
    """Modules that have the colour of the next one in their line."""
    return ~(lines ^ (lines >> 1)) & _places(side, 1)


@cache
def _places(side: int, further: int) -> int:
    """Modules with so many further ones between them and the end of their line."""
    line = (1 << (side - further)) - 1
    return sum(line << (row * side) for row in range(side))
