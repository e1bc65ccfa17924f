"""Every change of a byte and every cut of the file of sign-offs is found, the tail too."""

from hypothesis import given
from hypothesis import strategies as st
from record_samples import SAMPLE

from signage.control.approvals import held_against, read_ledger, written

LOG = written(SAMPLE.records)


def is_found(data):
    held = held_against(read_ledger(data, "a.jsonl"), SAMPLE.head, "a.jsonl")
    assert held.fault is None or not held.records
    return held.fault is not None


def test_every_byte_changed_in_each_of_its_eight_bits_is_found():
    missed = [
        (at, bit)
        for at in range(len(LOG))
        for bit in range(8)
        if not is_found(LOG[:at] + bytes([LOG[at] ^ 1 << bit]) + LOG[at + 1 :])
    ]
    assert missed == []


def test_every_cut_is_found():
    assert [at for at in range(len(LOG)) if not is_found(LOG[:at])] == []
    assert [at for at in range(1, len(LOG)) if not is_found(LOG[at:])] == []


@given(st.integers(0, len(LOG)), st.integers(0, 60), st.binary(max_size=60))
def test_whatever_is_put_in_the_place_of_a_piece_is_found(at, length, put):
    data = LOG[:at] + put + LOG[at + length :]
    assert data == LOG or is_found(data)


@given(st.permutations(LOG.splitlines(keepends=True)), st.integers(0, 6))
def test_lines_in_another_order_or_repeated_are_found(lines, again):
    data = b"".join([*lines, *lines[:again]])
    assert data == LOG or is_found(data)
