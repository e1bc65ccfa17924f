"""Looking for garbage rarely is no reason never to find it."""

import gc
import weakref

import pytest

from signage.ground.garbage import collect_rarely


class Circle:
    def __init__(self):
        self.self = self


@pytest.fixture(autouse=True)
def thresholds():
    before = gc.get_threshold()
    yield
    gc.set_threshold(*before)


def test_values_in_circles_are_still_found():
    collect_rarely()
    lost = weakref.ref(Circle())
    made = [[] for _ in range(2 * gc.get_threshold()[0])]
    assert lost() is None
    assert made


def test_python_looks_less_often():
    usual = 2000  # of the newest Python; 700 before
    gc.set_threshold(usual)
    collect_rarely()
    assert gc.get_threshold()[0] > 10 * usual
