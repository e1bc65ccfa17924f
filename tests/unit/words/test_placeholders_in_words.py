import pytest

from signage.words.placeholders import (
    StrayBraceError,
    fill,
    has_stray_brace,
    has_unpaired_isolate,
    isolate,
    isolate_code,
    placeholder_names,
)


def test_every_inserted_value_stands_in_a_first_strong_isolate():
    assert fill("Rub {time} now", {"time": "20 s"}) == "Rub \u206820 s\u2069 now"


def test_a_code_keeps_its_own_isolate():
    assert fill("Bin {bin}", {"bin": isolate_code("A1")}) == "Bin \u2066A1\u2069"


def test_a_list_of_codes_is_isolated_as_a_whole():
    both = f"{isolate_code('A')}, {isolate_code('B')}"
    assert isolate(both) == f"\u2068{both}\u2069"


def test_a_value_that_holds_a_placeholder_is_not_filled_again():
    assert fill("{item}", {"item": "{time}", "time": "20 s"}) == "\u2068{time}\u2069"


def test_a_placeholder_without_value_is_named():
    with pytest.raises(KeyError, match="zone"):
        fill("{zone}", {"time": "20 s"})


def test_a_text_with_a_stray_brace_is_not_filled():
    for text in ("Rub both hands {0.__class__} {", "Rub {time} }", "{Time}"):
        with pytest.raises(StrayBraceError):
            fill(text, {"time": "20 s"})


def test_placeholders_are_counted():
    assert placeholder_names("{time} {bin} {time}") == {"time": 2, "bin": 1}


@pytest.mark.parametrize("text", ["{time", "time}", "{Time}", "{ time }", "{time}}", "{}"])
def test_a_broken_placeholder_leaves_a_stray_brace(text):
    assert has_stray_brace(text)


def test_a_sound_text_has_no_stray_brace():
    assert not has_stray_brace("Rub {time}.")


@pytest.mark.parametrize(
    ("text", "is_unpaired"),
    [
        ("\u2068a\u2069", False),
        ("\u2068a", True),
        ("a\u2069", True),
        ("\u2069a\u2068", True),
        ("\u2066\u2067a\u2069\u2069", False),
    ],
)
def test_unpaired_isolates_are_found(text, is_unpaired):
    assert has_unpaired_isolate(text) is is_unpaired
