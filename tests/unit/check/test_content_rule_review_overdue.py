from datetime import date

from content_samples import found, subject, with_protocol

from signage.check.content_rules.review_overdue import RULE


def test_a_review_is_late_from_the_day_after():
    library = with_protocol(review_by=date(2026, 11, 30))
    assert found(RULE, subject(library, date(2026, 11, 30))) == []
    (problem,) = found(RULE, subject(library, date(2026, 12, 1)))
    assert problem.message == "The review of P2 was due by 2026-11-30, yesterday."
    assert problem.place == library.protocols["contact-room"].at("review_by")
    assert problem.severity == "S2"


def test_years_are_told_in_days():
    (problem,) = found(RULE, subject(with_protocol(review_by=date(2020, 6, 30)), date(2021, 6, 30)))
    assert "365 days ago" in problem.message
