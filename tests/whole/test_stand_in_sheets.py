"""Every sheet of the demo in the stand-in languages: longer than a translation, and from right to left."""

import demo

from signage.ground.problem import Severity
from signage.produce.check import check_request, stand_in_requests


def test_no_sheet_of_the_demo_lies_on_itself_in_a_stand_in_language():
    found = [p for r in stand_in_requests(demo.project()) for p in check_request(demo.project(), r)]
    assert [problem for problem in found if problem.severity is not Severity.S3] == []
