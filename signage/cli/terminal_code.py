"""A QR code on the terminal."""

from __future__ import annotations

import sys

_HALVES = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}


def code_lines(payload: str) -> list[str]:
    """The code in half blocks, two rows of modules a line, with its quiet zone (ISO/IEC 18004)."""
    from signage.compose.qr import QUIET_ZONE, qr_matrix

    matrix = qr_matrix(payload)
    blank = [False] * (len(matrix) + 2 * QUIET_ZONE)
    rows = [blank] * QUIET_ZONE
    rows += [[False] * QUIET_ZONE + list(row) + [False] * QUIET_ZONE for row in matrix]
    rows += [blank] * (QUIET_ZONE + len(rows) % 2)
    return [
        "".join(_HALVES[upper, lower] for upper, lower in zip(rows[i], rows[i + 1], strict=True))
        for i in range(0, len(rows) - 1, 2)
    ]


def print_code(payload: str) -> None:
    """Dark modules on a light ground, whatever the colours of the terminal; nothing where it cannot."""
    if not sys.stdout.isatty() or "utf" not in (sys.stdout.encoding or "").lower():
        return
    for line in code_lines(payload):
        print(f"\x1b[30;47m{line}\x1b[0m")  # noqa: T201 - these controls are meant for the terminal
