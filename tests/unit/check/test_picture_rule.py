"""All picture rules together, on pictures that ship."""

import pytest

from signage.check.picture_rule import picture_subject
from signage.check.registry import all_picture_rules
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

EACH_KIND = ("apron-on", "hand-rub", "no-touch-face", "technique-thumbs", "rub-inner-gloves", "bin")


@pytest.mark.parametrize("name", EACH_KIND)
def test_pictures_that_ship_are_clean(name):
    subject = picture_subject(PICTURES, name, PICTURES.names)
    assert [problem.message for rule in all_picture_rules() for problem in rule.find(subject)] == []


def test_a_finding_stands_at_the_sentence_of_the_picture():
    subject = picture_subject(PICTURES, "apron-on")
    problem = subject.problem(all_picture_rules()[0].rule, "is too thin")
    assert problem.place.path == "scenes/apron-on.yaml"
    assert problem.place.line > 1
    assert problem.message == "picture apron-on: is too thin"
