from hypothesis import given
from hypothesis import strategies as st

from signage.ground.fingerprint import REVISION_ALPHABET, fingerprint, revision_code


def test_key_order_does_not_change_a_fingerprint():
    assert fingerprint({"a": 1, "b": [1, 2]}) == fingerprint({"b": [1, 2], "a": 1})


def test_list_order_does():
    assert fingerprint([1, 2]) != fingerprint([2, 1])


def test_codes_hold_no_signs_that_are_mistaken_for_others():
    assert not set("0O1IL") & set(REVISION_ALPHABET)
    assert len(set(REVISION_ALPHABET)) == len(REVISION_ALPHABET) >= 28


@given(st.text())
def test_a_code_is_four_signs_of_the_alphabet(text):
    code = revision_code(fingerprint(text))
    assert len(code) == 4
    assert set(code) <= set(REVISION_ALPHABET)
