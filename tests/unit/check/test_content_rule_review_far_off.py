from datetime import date

from content_samples import found, subject, with_protocol

from signage.check.content_rules.review_far_off import RULE


def test_five_years_are_near_enough_and_a_day_more_is_not():
    today = date(2028, 2, 29)
    assert found(RULE, subject(with_protocol(review_by=date(2033, 2, 28)), today)) == []
    (problem,) = found(RULE, subject(with_protocol(review_by=date(2033, 3, 1)), today))
    assert problem.severity == "S3"
    assert "due by 2033-03-01" in problem.message
