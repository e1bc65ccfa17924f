import pytest
from pydantic import TypeAdapter, ValidationError

from signage.pictograms.kit.landmarks import LANDMARKS, PlacePoint, point_of

POINT = TypeAdapter(PlacePoint)


def test_a_landmark_is_its_point():
    assert POINT.validate_python("front.chin") == LANDMARKS["front"]["chin"]


def test_a_shift_is_added():
    x, y = LANDMARKS["side"]["nape"]
    assert POINT.validate_python("side.nape+(-22,20)") == (x - 22, y + 20)
    assert POINT.validate_python("side.nape + ( 1.5 , -2 )") == (x + 1.5, y - 2)


def test_two_numbers_are_a_point():
    assert POINT.validate_python([3, 4.5]) == (3, 4.5)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("chin", "write \\[x, y\\] or a landmark"),
        ("back.chin", "no view 'back'; views are front, side"),
        ("front.elbow", "the view front has no 'elbow'; it has crown"),
        ("front.chin+(1)", "is no point"),
    ],
)
def test_a_wrong_name_says_what_there_is(text, words):
    with pytest.raises(ValueError, match=words):
        point_of(text)


@pytest.mark.parametrize("value", [[1], [1, 2, 3], None, 7])
def test_what_is_no_point_is_refused(value):
    with pytest.raises(ValidationError):
        POINT.validate_python(value)


@pytest.mark.parametrize("view", LANDMARKS)
def test_every_landmark_stands_on_the_canvas(view):
    assert all(0 <= x <= 96 and 0 <= y <= 96 for x, y in LANDMARKS[view].values())
