from datetime import UTC, date, datetime

import pytest

from signage.ground.day import today
from signage.ground.edition import edition_date
from signage.ground.errors import WrongUsageError


def test_the_day_is_pinned_by_the_environment(monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795651200")  # reproducible-builds.org
    assert today() == date(2026, 11, 26)
    assert edition_date() == datetime(2026, 11, 26, tzinfo=UTC)


@pytest.mark.parametrize("epoch", ["²", "٣", "-1", "1e9", "yesterday", "9" * 12, "9" * 20, "9" * 5000])
def test_what_is_no_time_is_refused_in_words(monkeypatch, epoch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", epoch)
    for read in (today, edition_date):
        with pytest.raises(WrongUsageError, match="a whole number of seconds since 1970 was wanted") as told:
            read()
        assert len(str(told.value)) < 200
