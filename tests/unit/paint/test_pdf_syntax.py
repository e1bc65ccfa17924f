"""Values in PDF notation, read back by pikepdf (qpdf's parser)."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from outside_readers import outside

from signage.paint.pdf import syntax


def parsed(notation):
    return outside("pikepdf").Object.parse(notation.encode())


@given(st.floats(-1e6, 1e6), st.integers(0, 6))
def test_a_number_keeps_its_value_to_its_decimals(value, decimals):
    text = syntax.number(value, decimals)
    assert "e" not in text
    assert abs(Decimal(text) - Decimal(value)) <= Decimal("0.5000001") * Decimal(10) ** -decimals


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [
        (100.0, 3, "100"),
        (100.0, 0, "100"),
        (-0.0001, 3, "0"),
        (0.5, 3, "0.5"),
        (1e-5, 6, "0.00001"),
        (10.25, 2, "10.25"),
    ],
)
def test_numbers_are_short(value, decimals, text):
    assert syntax.number(value, decimals) == text


@given(st.text(st.characters(exclude_categories=["Cs"])))
def test_a_text_string_comes_back(text):
    assert str(parsed(syntax.text_string(text))) == text


@given(st.text(st.characters(min_codepoint=0x21, max_codepoint=0x7E), min_size=1))
def test_a_name_comes_back(text):
    assert str(parsed(syntax.name(text)))[1:] == text


def test_a_dictionary_comes_back():
    value = parsed(syntax.dictionary({"Type": "/Page", "Box": syntax.array(["0", "1.5"]), "Shown": "true"}))
    assert str(value.Type) == "/Page"
    assert [float(number) for number in value.Box] == [0, 1.5]
    assert value.Shown is True


def test_colours_lie_between_nothing_and_one():
    assert syntax.colour_numbers("#FF0080") == "1 0 0.502"
