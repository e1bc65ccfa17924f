"""QR codes as few merged rectangles."""

from __future__ import annotations

from functools import lru_cache

from signage.ground.geometry import Box, Path, Segment

QUIET_ZONE = 4
"""Modules of paper on each side (ISO/IEC 18004)."""

SMALLEST_MODULE_MM = 0.5
"""Below this an office laser printer and a wiped laminate lose modules (common practice, no source)."""


@lru_cache(maxsize=512)
def qr_matrix(payload: str) -> tuple[tuple[bool, ...], ...]:
    """Dark modules row by row, without quiet zone, at error level Q (about 25 % recovery)."""
    import qrcode  # noqa: PLC0415 - it loads an imaging library that only sheets need

    code = qrcode.QRCode(error_correction=qrcode.constants.ERROR_CORRECT_Q, border=0)
    code.add_data(payload, optimize=0)
    code.make(fit=True)
    return tuple(tuple(bool(cell) for cell in row) for row in code.get_matrix())


@lru_cache(maxsize=512)
def merged_rectangles(payload: str) -> tuple[tuple[int, int, int, int], ...]:
    """``(column, row, width, height)`` of rectangles that cover each dark module exactly once.

    Greedy: from the first uncovered dark module as far right as possible, then as far down.
    """
    matrix = qr_matrix(payload)
    side = len(matrix)
    open_cells = {(row, column) for row in range(side) for column in range(side) if matrix[row][column]}
    found: list[tuple[int, int, int, int]] = []
    for row in range(side):
        for column in range(side):
            if (row, column) not in open_cells:
                continue
            width = 1
            while (row, column + width) in open_cells:
                width += 1
            height = 1
            while all((row + height, column + i) in open_cells for i in range(width)):
                height += 1
            open_cells.difference_update((row + j, column + i) for i in range(width) for j in range(height))
            found.append((column, row, width, height))
    return tuple(found)


def module_mm(payload: str, side_mm: float) -> float:
    """Side of one module when the code with its quiet zone is ``side_mm`` wide."""
    return side_mm / (len(qr_matrix(payload)) + 2 * QUIET_ZONE)


def smallest_side_mm(payload: str) -> float:
    """The least side, quiet zone included, at which modules keep their floor."""
    return (len(qr_matrix(payload)) + 2 * QUIET_ZONE) * SMALLEST_MODULE_MM


def qr_path(payload: str, box: Box) -> Path:
    """The code inside a square box that includes the quiet zone."""
    module = module_mm(payload, box.width)
    segments: list[Segment] = []
    for column, row, width, height in merged_rectangles(payload):
        left = box.x + (QUIET_ZONE + column) * module
        top = box.y + (QUIET_ZONE + row) * module
        right, bottom = left + width * module, top + height * module
        segments += [("M", left, top), ("L", right, top), ("L", right, bottom), ("L", left, bottom), ("Z",)]
    return tuple(segments)
