from datetime import date

import demo

from signage.check.content_rule import ContentSubject, SignOffFault, SignOffFaults
from signage.check.content_rules.damaged_sign_offs import find
from signage.ground.place import Place

FAULT = SignOffFault(
    "4 records were seen, and the file holds 2.", Place("content/approvals.jsonl", 3, 1), "Restore"
)


def found(sign_offs):
    return list(find(ContentSubject(demo.project().library, date(2026, 11, 26), sign_offs=sign_offs)))


def test_a_damaged_file_is_told_at_its_first_bad_record_with_what_to_do():
    (problem,) = found(SignOffFaults(FAULT))
    assert (problem.code, problem.message) == ("CN-12", FAULT.message)
    assert (str(problem.place), problem.hint) == ("content/approvals.jsonl:3:1", "Restore")


def test_a_whole_file_and_a_missing_one_are_silent():
    assert found(SignOffFaults()) == []
    assert found(SignOffFaults(uncounted=(FAULT,))) == []
