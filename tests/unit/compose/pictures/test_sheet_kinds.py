import demo
import pytest

from signage.compose.pictures.sheet_kinds import PICTURE_KINDS, picture_papers, table_beside
from signage.ground.errors import WrongUsageError
from signage.model.picture_trial import empty_table, trial_forms
from signage.produce.requests import Wanted, requests_for


def test_a4_is_the_paper_unless_another_is_asked_for():
    assert picture_papers(()) == ("A4",)
    assert picture_papers(("A1", "Letter")) == ("Letter",)


def test_papers_on_which_nothing_can_be_made_are_refused():
    with pytest.raises(WrongUsageError, match="A4 or Letter, not on A1"):
        picture_papers(("A1",))


def test_sheets_about_pictures_are_made_only_when_asked_for():
    project = demo.project()
    assert not {request.kind for request in requests_for(project, Wanted())} & set(PICTURE_KINDS)
    asked = requests_for(project, Wanted(locales=("en", "ar"), kinds=PICTURE_KINDS, seed=9))
    assert [(r.locale, r.kind, r.protocol, r.paper) for r in asked] == [
        (tag, kind, "", "A4") for tag in ("en", "ar") for kind in PICTURE_KINDS
    ]
    assert {request.seed for request in asked} == {9}


def test_a_trial_comes_with_its_table_and_other_sheets_with_none():
    context = demo.project().picture_context("clean-hands", "en")
    assert table_beside(context, "picture-trial", 5) == empty_table(trial_forms(context.pictures, 5))
    assert table_beside(context, "pictures", 5) is None
