from datetime import date
from typing import Annotated

import pytest
from pydantic import TypeAdapter, ValidationError
from pydantic_core import PydanticCustomError

from signage.load import kinds


def read(kind, text):
    return TypeAdapter(kind).validate_python(text)


def refused(kind, text):
    with pytest.raises(ValidationError) as caught:
        read(kind, text)
    return caught.value.errors()[0]["ctx"]["message"]


@pytest.mark.parametrize(
    ("text", "millimetres"),
    # The inch is 25.4 mm exactly (international yard and pound agreement, 1959); the point of desktop
    # publishing is 1/72 inch (PostScript Language Reference, section 4.3).
    [("1.5 m", 1500.0), ("210 mm", 210.0), ("29.7cm", 297.0), ("1 in", 25.4), ("72 pt", 25.4)],
)
def test_lengths_with_units_become_millimetres(text, millimetres):
    assert kinds.read_length(text) == pytest.approx(millimetres)


@pytest.mark.parametrize("text", ["1.5", "-1 m", "1,5 m", "m", "1 km", "1e3 mm", "nan mm", ""])
def test_other_writings_are_no_lengths(text):
    with pytest.raises(PydanticCustomError):
        kinds.read_length(text)


def test_a_measure_keeps_to_what_can_be():
    margin = Annotated[float, kinds.length_between("0 mm", "50 mm", "margin of a printer")]
    assert [read(margin, text) for text in ("0 mm", "5 cm")] == [0, 50]
    assert refused(margin, "100 m") == "'100 m' is no margin of a printer; 0 mm to 50 mm was wanted."
    assert refused(margin, "9" * 400 + " m")
    light = Annotated[int, kinds.number_between(1, 120_000, "light in lux")]
    assert read(light, "300") == 300
    for text in ("0", "999999999"):
        assert "1 to 120000 was wanted" in refused(light, text)


def test_a_day_of_another_age_is_a_slip():
    for text in ("0001-01-01", "1999-12-31", "2200-01-01", "9999-12-31"):
        assert "lies outside the years 2000 to 2199" in refused(kinds.IsoDate, text)


def test_a_letter_under_a_pile_of_marks_is_refused():
    # UAX #15, section 13: at most 30 in a row; Tibetan and pointed Hebrew use up to four
    assert read(kinds.ReadableText, "e" + "\u0301" * 30)
    assert "More than 30 marks" in refused(kinds.ReadableText, "e" + "\u0301" * 31)


def test_what_is_too_long_is_told_with_its_length():
    assert read(kinds.Name, "n" * 120)
    assert refused(kinds.Name, "n" * 121) == "The text is 121 characters long; at most 120 were wanted."
    assert "1000000 characters" in refused(kinds.ReadableText, "n" * 1_000_000)
    assert read(kinds.Identifier, "a" * 60)
    assert "at most 60" in refused(kinds.Identifier, "a" * 300)
    address = "http://ward.internal/"
    assert read(kinds.WebAddress, address + "a" * (100 - len(address)))
    assert "stands in every code" in refused(kinds.WebAddress, address + "a" * 3000)


@pytest.mark.parametrize(
    "text", ["012", "1_000", "+1", "-1", "1.0", "١٢", "1 s", "0x10", "", "1e3", "9" * 5000]
)
def test_other_writings_are_no_whole_numbers(text):
    assert refused(kinds.WholeNumber, text)


@pytest.mark.parametrize(("text", "number"), [("0", 0), ("20", 20), ("999999999", 999_999_999)])
def test_whole_numbers(text, number):
    assert read(kinds.WholeNumber, text) == number


@pytest.mark.parametrize("text", ["on", "off", "Yes", "y", "1", "TRUE", ""])
def test_only_four_words_mean_yes_or_no(text):
    assert refused(kinds.YesNo, text)


def test_yes_and_no():
    assert [read(kinds.YesNo, word) for word in ("yes", "true", "no", "false")] == [True, True, False, False]


@pytest.mark.parametrize(
    # ISO 8601-1:2019, 5.2.2.1, extended format of the calendar date; leap years of the Gregorian calendar.
    ("text", "day"),
    [("2027-05-31", date(2027, 5, 31)), ("2028-02-29", date(2028, 2, 29)), ("2000-02-29", date(2000, 2, 29))],
)
def test_dates(text, day):
    assert read(kinds.IsoDate, text) == day


@pytest.mark.parametrize(
    "text",
    [
        "2027-02-29",
        "2100-02-29",
        "20270531",
        "2027-5-31",
        "31.05.2027",
        "2027-W22-1",
        "0000-01-01",
        "٢٠٢٧-٠٥-٣١",
    ],
)
def test_other_writings_are_no_dates(text):
    assert refused(kinds.IsoDate, text)


@pytest.mark.parametrize("text", ["a", "outer-gloves", "p1", "x9-2b"])
def test_identifiers(text):
    assert read(kinds.Identifier, text) == text


@pytest.mark.parametrize("text", ["A", "1a", "a_b", "a--b", "-a", "a-", "a b", "é", "a/b", "", "..", "a\n"])
def test_other_writings_are_no_identifiers(text):
    assert refused(kinds.Identifier, text)


@pytest.mark.parametrize("text", ["en", "pt-BR", "sr-Latn-RS", "de-1996", "en-XA"])
def test_language_tags(text):
    # Examples of RFC 5646, appendix A, and a private-use region.
    assert read(kinds.LanguageTag, text) == text


@pytest.mark.parametrize("text", ["e", "fr_CA", "a-DE", "de-419-DE", "english", "../en", ""])
def test_other_writings_are_no_language_tags(text):
    # The ill-formed examples of RFC 5646, appendix A, and writings of other standards.
    assert refused(kinds.LanguageTag, text)


@pytest.mark.parametrize(
    "text",
    [
        "http://a.internal:8080",
        "https://ward.example.org/pages?x=1",
        "http://10.0.0.7:80",
        "http://w-1.:65535",
    ],
)
def test_web_addresses(text):
    assert read(kinds.WebAddress, text) == text


@pytest.mark.parametrize(
    "text",
    [
        "a.internal", "ftp://a", "http://", "http://a b", "javascript:alert(1)", "http://a/é", "http://-...-",
        "http://a-", "http://.a", "http://a..b", f"http://{'a' * 64}", "http://a:0", "http://a:65536", "http://a:",
    ],
)  # fmt: skip
def test_other_writings_are_no_web_addresses(text):
    assert refused(kinds.WebAddress, text)


def test_a_list_where_a_text_was_wanted_is_called_a_list():
    assert refused(kinds.ReadableText, ("a",)) == "Here stands a list; a text was wanted."
    assert refused(kinds.YesNo, {"a": "b"}) == "Here stands a mapping; yes or no was wanted."
