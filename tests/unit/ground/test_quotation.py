"""What a message quotes is short, and no terminal obeys it."""

from signage.ground.quotation import LONGEST_QUOTE, printable, quoted


def test_a_quote_is_short_and_holds_nothing_invisible():
    assert quoted("Rub \u206820\u00a0s\u2069") == "'Rub 20 s'"
    long = quoted("word " * 40_000)
    assert len(long) <= LONGEST_QUOTE + 2
    assert long.endswith("…'")
    assert quoted("x" * LONGEST_QUOTE) == f"'{'x' * LONGEST_QUOTE}'"


def test_nothing_that_a_terminal_obeys_is_left():
    # ECMA-48: ESC and CSI begin control functions, BEL rings; UAX #9: U+202E reverses what follows.
    assert printable("a\x1b[31mred\x9b2J\a") == r"a\x1b[31mred\x9b2J\x07"
    assert printable("out\u202efdp") == r"out\u202efdp"
    assert printable("Rub \u206820 s\u2069") == "Rub 20 s"
    assert printable("line\nnext\ttab") == "line\nnext\ttab"
    assert printable("line\nnext", is_line=True) == r"line\nnext"
    assert printable("r\udce9sum\udce9") == r"r\udce9sum\udce9"


def test_words_of_every_script_stay_as_they_are():
    # Zero-width joiners belong to Persian, Hindi and Sinhala spelling (Unicode core specification, 23.2).
    for text in ("می\u200cخواهم", "क्\u200dष", "הידיים", "手を洗う", "50 × 20 – „Ü“"):
        assert printable(text) == text
