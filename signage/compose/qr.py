"""QR codes as few merged rectangles."""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Any

from signage.compose.qr_mask import MASKS, Symbol, mask_of, penalty, symbol_of
from signage.ground.geometry import Box, Path, Segment

QUIET_ZONE = 4
"""Modules of paper on each side (ISO/IEC 18004)."""

SMALLEST_MODULE_MM = 0.5
"""Below this an office laser printer and a wiped laminate lose modules (common practice, no source)."""

_CODES_AT_HAND = 128
"""Codes that are kept: those of all steps of a protocol in one language, which its papers share."""


@lru_cache(maxsize=_CODES_AT_HAND)
def _dark_rows(payload: str) -> tuple[int, ...]:
    """Rows of dark modules, without quiet zone, at error level Q (about 25 % recovery).

    A row is a number with a bit a module, the first one highest. The library writes the symbol once, with
    the first mask; it would write and weigh it eight times to find the best one.
    """
    import qrcode  # noqa: PLC0415 - it loads an imaging library that only sheets need

    code = qrcode.QRCode(error_correction=qrcode.constants.ERROR_CORRECT_Q, border=0, mask_pattern=0)
    code.add_data(payload, optimize=0)
    code.make(fit=True)
    side = len(code.modules)
    data = _data_modules(code.version)
    _write_format(code, mask=0, is_blank=True)
    written = symbol_of(code.modules)
    turned = [mask_of(mask, side).changed(mask_of(0, side)).within(data) for mask in MASKS]
    best = min(MASKS, key=lambda mask: penalty(written.changed(turned[mask]), side))
    _write_format(code, best)
    fixed = symbol_of(code.modules).rows & ~data.rows
    rows = (written.changed(turned[best]).rows & data.rows) | fixed
    line = (1 << side) - 1
    return tuple((rows >> (side * number)) & line for number in reversed(range(side)))


@cache
def _data_modules(version: int) -> Symbol:
    """The modules of a version that hold data: those that differ between all noughts and all ones."""
    import qrcode  # noqa: PLC0415 - the same

    code = qrcode.QRCode(version, border=0)
    capacity = (17 + 4 * version) ** 2 // 8
    written = []
    for byte in (0x00, 0xFF):
        code.data_cache = [byte] * capacity
        code.makeImpl(True, 0)
        written.append(symbol_of(code.modules))
    return written[0].changed(written[1])


def _write_format(code: Any, mask: int, *, is_blank: bool = False) -> None:
    """Write the mask and the version into a code; both are light while masks are weighed."""
    code.setup_type_info(is_blank, mask)
    if code.version >= 7:  # ISO/IEC 18004, 7.10: smaller ones do not tell their version
        code.setup_type_number(is_blank)


@lru_cache(maxsize=_CODES_AT_HAND)
def merged_rectangles(payload: str) -> tuple[tuple[int, int, int, int], ...]:
    """``(column, row, width, height)`` of rectangles that cover each dark module exactly once.

    Greedy: from the first uncovered dark module as far right as possible, then as far down.
    """
    open_rows = list(_dark_rows(payload))
    side = len(open_rows)
    found: list[tuple[int, int, int, int]] = []
    for row in range(side):
        while open_rows[row]:
            left = open_rows[row].bit_length()
            width = left - (open_rows[row] ^ ((1 << left) - 1)).bit_length()
            run = ((1 << width) - 1) << (left - width)
            end = row
            while end < side and open_rows[end] & run == run:
                open_rows[end] ^= run
                end += 1
            found.append((side - left, row, width, end - row))
    return tuple(found)


def qr_matrix(payload: str) -> tuple[tuple[bool, ...], ...]:
    """Dark modules row by row, without quiet zone."""
    rows = _dark_rows(payload)
    return tuple(tuple(digit == "1" for digit in f"{row:0{len(rows)}b}") for row in rows)


def module_mm(payload: str, side_mm: float) -> float:
    """Side of one module when the code with its quiet zone is ``side_mm`` wide."""
    return side_mm / (len(_dark_rows(payload)) + 2 * QUIET_ZONE)


def smallest_side_mm(payload: str) -> float:
    """The least side, quiet zone included, at which modules keep their floor."""
    return (len(_dark_rows(payload)) + 2 * QUIET_ZONE) * SMALLEST_MODULE_MM


@lru_cache(maxsize=64)
def qr_path(payload: str, box: Box) -> Path:
    """The code inside a square box that includes the quiet zone; cards show it on two papers alike."""
    module = module_mm(payload, box.width)
    segments: list[Segment] = []
    for column, row, width, height in merged_rectangles(payload):
        left = box.x + (QUIET_ZONE + column) * module
        top = box.y + (QUIET_ZONE + row) * module
        right, bottom = left + width * module, top + height * module
        segments += [("M", left, top), ("L", right, top), ("L", right, bottom), ("L", left, bottom), ("Z",)]
    return tuple(segments)
