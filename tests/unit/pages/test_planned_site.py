from site_samples import publication, site

from signage.pages.planned_site import PlannedSite

PLANNED = PlannedSite(publication(), "ar")


def test_planned_pages_are_pages_of_the_built_site():
    assert PLANNED.keys() <= site().files.keys()
    assert len(PLANNED) > 42


def test_a_planned_step_is_written_as_it_will_stand_in_the_site():
    file = "ar/p1/apron-off/index.html"
    assert file in PLANNED
    assert PLANNED[file] == site().files[file]


def test_what_is_not_planned_is_not_there():
    assert "ar/p1/apron-of/index.html" not in PLANNED
