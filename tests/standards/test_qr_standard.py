"""QR codes against ISO/IEC 18004, by the tables of segno 1.6 and the decoder zxing-cpp."""

import random
import string

import pytest
import qrcode
from outside_readers import outside

from signage.compose import qr, qr_mask
from signage.ground.geometry import Box

# FACTS of ISO/IEC 18004 as transcribed in segno's consts.py: bytes in byte mode at level Q, versions 1 to 10.
BYTES_AT_Q = {1: 11, 2: 20, 3: 32, 4: 46, 5: 60, 6: 74, 7: 86, 8: 108, 9: 130, 10: 151}


@pytest.mark.parametrize(("version", "capacity"), BYTES_AT_Q.items())
def test_capacity_and_side_follow_the_standard(version, capacity):
    # lower-case letters force byte mode; side = 17 + 4 v (Denso Wave, QR generation page)
    assert len(qr.qr_matrix("a" * capacity)) == 17 + 4 * version
    assert len(qr.qr_matrix("a" * (capacity + 1))) == 17 + 4 * (version + 1)


def test_capacity_table_agrees_with_segno():
    consts = outside("segno.consts")
    for version, capacity in BYTES_AT_Q.items():
        bits = consts.SYMBOL_CAPACITY[version][consts.ERROR_LEVEL_Q]
        count_bits = 8 if version < 10 else 16
        assert (
            bits.get(consts.MODE_BYTE) if isinstance(bits, dict) else (bits - 4 - count_bits) // 8
        ) == capacity


def test_merged_rectangles_cover_each_dark_module_once():
    payload = "http://lantern-bay.internal:8080/ar/p1/?r=K7M2"
    cells = [
        (row + j, column + i)
        for column, row, width, height in qr.merged_rectangles(payload)
        for i in range(width)
        for j in range(height)
    ]
    dark = {(r, c) for r, line in enumerate(qr.qr_matrix(payload)) for c, cell in enumerate(line) if cell}
    assert len(cells) == len(set(cells))
    assert set(cells) == dark


def test_quiet_zone_is_four_modules_of_paper():
    payload = "http://lantern-bay.internal:8080/ar/p1/?r=K7M2"
    box = Box(10, 20, 30, 30)
    module = qr.module_mm(payload, 30)
    xs = [segment[1] for segment in qr.qr_path(payload, box) if len(segment) > 1]
    ys = [segment[2] for segment in qr.qr_path(payload, box) if len(segment) > 1]
    assert min(xs) - 10 == pytest.approx(4 * module)  # ISO/IEC 18004: quiet zone of 4X
    assert 40 - max(xs) == pytest.approx(4 * module)
    assert min(ys) - 20 == pytest.approx(4 * module)


def test_printed_side_of_version_5_at_half_a_millimetre():
    # worked value: (17 + 4 v + 8) modules of 0.5 mm at v = 5 gives 22.5 mm
    assert qr.smallest_side_mm("a" * 60) == pytest.approx(22.5)


def test_the_mask_is_the_one_with_the_lowest_penalty():
    rng = random.Random(18004)
    letters = string.ascii_letters + string.digits + "/:?=&"
    for length in (1, 11, 12, 46, 60, 61, 74, 75, 86, 87, 130, 152):
        payload = "".join(rng.choices(letters, k=length)) + "a"
        code = qrcode.QRCode(error_correction=qrcode.constants.ERROR_CORRECT_Q, border=0)
        code.add_data(payload, optimize=0)
        code.make()
        assert qr.qr_matrix(payload) == tuple(tuple(map(bool, row)) for row in code.get_matrix()), payload


def test_penalties_agree_with_segno():
    encoder = outside("segno.encoder")
    rng = random.Random(7)
    for side in (21, 25, 41, 57):
        for dark in (0.05, 0.3, 0.5, 0.95):
            modules = [[rng.random() < dark for _ in range(side)] for _ in range(side)]
            modules[3][5:16] = map(int, "00001011101")
            rows = [bytearray(row) for row in modules]
            runs, blocks, _, share = encoder.mask_scores(rows, side, side)
            assert qr_mask.penalty(qr_mask.symbol_of(modules), side) == (
                runs + blocks + share + 40 * _like_a_finder(modules)
            )


def _like_a_finder(modules):
    """Places in rows and columns that ISO/IEC 18004, table 11, names: 1:1:3:1:1 beside four light modules."""
    lines = ["".join("01"[bool(cell)] for cell in line) for line in (*modules, *zip(*modules, strict=True))]
    found = ("10111010000", "00001011101")
    return sum(line.startswith(each, i) for line in lines for each in found for i in range(len(line)))
