"""What paragraphs need of the bidirectional algorithm; its rules are compared with ICU in tests/standards."""

from signage.text.bidi import first_strong_level, in_visual_order, levels


def test_the_direction_comes_from_the_first_strong_character():
    assert first_strong_level("20 (א) b") == 1
    assert first_strong_level("20 (b) א") == 0
    assert first_strong_level("20 – !") is None


def test_what_stands_in_an_isolate_does_not_decide_the_direction():
    assert first_strong_level("\u2068A1\u2069 אב") == 1
    assert first_strong_level("\u2067אב\u2069 go") == 0


def test_each_paragraph_of_a_text_has_its_own_direction():
    assert levels("ab\nאב", None) == [0, 0, 0, 1, 1]


def test_an_isolated_code_keeps_its_order_and_leaves_its_surroundings_alone():
    text = "אב \u2066A1-2\u2069, ג"
    order = "".join(in_visual_order(text, levels(text, 1)))
    visible = "".join(character for character in order if character not in "\u2066\u2069")
    assert visible == "ג ,A1-2 בא"


def test_a_ratio_in_a_left_to_right_isolate_is_not_turned_round():
    text = "נקה \u20661:9\u2069"
    assert "1:9" in "".join(in_visual_order(text, levels(text, 1)))


def test_pieces_of_one_even_level_stay_in_place():
    assert in_visual_order(["a", "b", "c"], [2, 2, 2]) == ["a", "b", "c"]
    assert in_visual_order([], []) == []
