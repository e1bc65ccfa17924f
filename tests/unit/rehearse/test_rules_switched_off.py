"""No part of a rule is dead: without any of the places that report a finding some sample fails."""

import pytest
from rules_switched_off import samples, sites, unnoticed, watched


def test_every_place_that_reports_is_missed_by_a_sample():
    assert [str(site) for site in unnoticed()] == [], "write a case that fires it, or delete it"


def test_a_sample_fails_while_the_place_is_off_that_it_needs():
    site = next(
        each for each in sites() if (each.file, each.rule) == ("verbs/undressing.py", "STILL_COVERED")
    )
    firing = next(sample for name, sample in samples().items() if name.startswith("LY-1: gown off while"))
    firing()
    with watched(switched_off=site) as seen, pytest.raises(AssertionError):
        firing()
    assert any(site.first <= line <= site.last for _file, line in seen)


def test_rules_of_every_file_are_searched():
    files = {site.file.partition("/")[0] for site in sites()}
    assert {"verbs", "judging", "ending.py"} <= files
