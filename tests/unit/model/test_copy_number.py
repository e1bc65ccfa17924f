from itertools import pairwise

from signage.ground.check_character import ALPHABET
from signage.model.copy_number import (
    copy_number,
    read_copy_number,
    running_number,
    slips_of,
    ward_letters,
)

_LETTERS = ("LB", "QW", "ZZ", "AA", "OI")


def _numbers(letters, until=1500):
    made = (copy_number(letters, running) for running in (*range(1, until), 9999, 10000, 123456))
    return [number for number in made if number is not None]


def test_a_ward_gives_two_letters():
    assert ward_letters("lantern-bay") == "LB"
    assert ward_letters("maternity") == "MA"
    assert ward_letters("ward-7b") == "WB"
    assert ward_letters("7") == "XX"


def test_most_running_numbers_are_given_and_none_ends_in_a_look_alike():
    for letters in _LETTERS:
        numbers = _numbers(letters)
        assert len(numbers) > 1000
        assert not {number[-1] for number in numbers} & set("01OILU")
        assert [running_number(number) for number in numbers] == sorted(map(running_number, numbers))


def test_every_wrong_character_and_every_swap_of_neighbours_is_caught():
    missed = []
    for number in (number for letters in _LETTERS for number in _numbers(letters, 250)):
        plain = number.replace("-", "")
        for index, right in enumerate(plain):
            for wrong in ALPHABET:
                spoilt = plain[:index] + wrong + plain[index + 1 :]
                if wrong != right and read_copy_number(spoilt) not in {None, number}:
                    missed.append((number, spoilt))
        for index, (first, second) in enumerate(pairwise(plain)):
            spoilt = plain[:index] + second + first + plain[index + 2 :]
            if first != second and read_copy_number(spoilt) not in {None, number}:
                missed.append((number, spoilt))
    assert missed == []


def test_only_look_alikes_are_read_as_what_was_printed():
    number = copy_number("LB", 10)
    assert number is not None
    assert read_copy_number(number.lower().replace("-", " ")) == number
    assert read_copy_number(number.replace("0", "O").replace("1", "l")) == number
    for wrong in ("", "LB", "LB-0010", f"{number}{number}", "PLB0010X", "١٢٣٤", "LB-00١0-K"):
        assert read_copy_number(wrong) is None, wrong


def test_a_slip_is_led_back_to_the_number_that_was_meant():
    number = next(iter(_numbers("LB")))
    plain = number.replace("-", "")
    for slip in (plain[1] + plain[0] + plain[2:], plain[:3] + "9" + plain[4:], plain[:-2] + plain[-1]):
        assert number in slips_of(slip), slip
