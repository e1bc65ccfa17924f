"""Check characters against published numbers that use ISO/IEC 7064 MOD 37,36."""

import pytest

from signage.ground.check_character import ALPHABET, check_character, is_checked

_GRID = "A12425GABC1234002M"
"""The example of the GRid standard (IFPI): A1-2425G-ABC1234002-M."""

_ISAN = ("00000000D07A0090Q", "000000003A8D0000Z", "00003BAB93520000G")
"""Examples of the ISAN user guide (ISO 15706): roots and episodes with their check characters."""

_ISAN_WITH_VERSION = ("00003BAB9352000000000000Q", "000000003A8D0000000000006")
"""The second check character of an ISAN covers root, episode and version, without the first (ISO 15706-2)."""


def test_published_numbers_have_the_check_characters_that_they_were_published_with():
    for number in (_GRID, *_ISAN, *_ISAN_WITH_VERSION):
        assert check_character(number[:-1]) == number[-1], number
        assert is_checked(number)


def test_every_single_wrong_character_is_caught():
    """What ISO/IEC 7064 promises of each of its systems: all single substitutions are detected."""
    for number in (_GRID, *_ISAN):
        for index, right in enumerate(number):
            for wrong in set(ALPHABET) - {right}:
                assert not is_checked(number[:index] + wrong + number[index + 1 :]), (number, index, wrong)


def test_other_characters_are_refused():
    with pytest.raises(ValueError, match="substring"):
        check_character("a1")
    assert not is_checked("LB-0017-K")
