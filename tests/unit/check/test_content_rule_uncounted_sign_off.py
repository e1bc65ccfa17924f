from datetime import date

import demo

from signage.check.content_rule import ContentSubject, SignOffFault, SignOffFaults
from signage.check.content_rules.uncounted_sign_off import find
from signage.ground.place import Place

WHY = SignOffFault(
    "The sign-off of P1 does not count: it is not signed", Place("content/approvals.jsonl", 2, 1)
)


def found(sign_offs):
    return list(find(ContentSubject(demo.project().library, date(2026, 11, 26), sign_offs=sign_offs)))


def test_a_sign_off_that_does_not_count_is_told_with_its_reason():
    (problem,) = found(SignOffFaults(uncounted=(WHY,)))
    assert (problem.code, problem.message, problem.place) == ("CN-13", WHY.message, WHY.place)
    assert "signage approve" in problem.hint


def test_sign_offs_that_count_are_silent():
    assert found(SignOffFaults()) == []
