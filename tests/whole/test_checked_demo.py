"""Every rule over the whole demo, part by part, so that no test takes minutes."""

from datetime import date

import demo
import pytest

from signage.ground.problem import Severity
from signage.produce.check import check_orders, check_picture, check_request, stand_in_requests
from signage.produce.requests import Wanted, requests_for
from signage.text.font_set import BUNDLED_FONTS
from signage.words.coverage import coverage_problems
from signage.words.standin import STAND_INS


@pytest.mark.parametrize("tag", [*demo.LANGUAGES, *STAND_INS])
def test_every_sheet_of_a_language_is_clean(tag):
    project = demo.project()
    every = [*requests_for(project, Wanted()), *stand_in_requests(project)]
    requests = [each for each in every if each.locale == tag]
    assert requests
    problems = [problem for request in requests for problem in check_request(project, request)]
    assert [problem for problem in problems if problem.severity is not Severity.S3] == []
    # one wall slot of the demo is read from farther than any paper that fits it can carry, on purpose;
    # stand-in languages are longer than any, and warn
    assert tag in STAND_INS or {problem.code for problem in problems} <= {"SH-19"}


def test_every_picture_is_clean():
    project = demo.project()
    assert [problem for name in project.pictures_in_use for problem in check_picture(project, name)] == []


def test_every_order_and_the_words_of_every_language_in_use_are_clean():
    project = demo.project()
    assert check_orders(project, date(2026, 11, 26)) == []
    # Bengali is in work and has a few faults on purpose
    words = list(coverage_problems(project.library, project.messages, project.locales, BUNDLED_FONTS))
    assert {problem.locale for problem in words} == {"bn"}
