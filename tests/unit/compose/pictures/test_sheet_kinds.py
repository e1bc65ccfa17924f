import demo

from signage.compose.pictures.sheet_kinds import PICTURE_TRIAL, PICTURES
from signage.model.picture_trial import empty_table, trial_forms
from signage.produce.requests import SheetRequest, Wanted, order_of, requests_for
from signage.produce.unmade import reasons_for_nothing

BOTH = (PICTURES.name, PICTURE_TRIAL.name)


def test_a4_is_the_paper_unless_another_is_asked_for():
    for kind in (PICTURES, PICTURE_TRIAL):
        assert kind.papers.chosen((), ("A1", "Letter"), is_named=True) == ("A4",)
        assert kind.papers.chosen(("A1", "Letter"), ("A4",), is_named=True) == ("Letter",)


def test_papers_on_which_nothing_can_be_made_are_told():
    wanted = Wanted(kinds=BOTH, papers=("A1",))
    assert requests_for(demo.project(), wanted) == ()
    told = "made on A4 or Letter, not with --paper A1. Leave --paper away, or name one of them."
    assert reasons_for_nothing(demo.project(), wanted) == (
        f"Sheets of pictures are {told}",
        f"Picture trials are {told}",
    )


def test_sheets_about_pictures_are_made_only_when_asked_for():
    project = demo.project()
    assert not {request.kind for request in requests_for(project, Wanted())} & set(BOTH)
    asked = requests_for(project, Wanted(locales=("en", "ar"), kinds=BOTH, seed=9))
    assert [(r.locale, r.kind, r.protocol, r.paper, r.seed) for r in asked] == [
        (tag, kind, "", "A4", seed) for tag in ("en", "ar") for kind, seed in zip(BOTH, (0, 9), strict=True)
    ]


def test_a_trial_comes_with_its_table_and_the_pictures_with_a_gallery():
    request = SheetRequest("clean-hands", "en", "picture-trial", "", "A4", seed=5)
    order = order_of(demo.project(), request)
    assert PICTURE_TRIAL.table(order) == empty_table(trial_forms(order.context.pictures, 5))
    assert PICTURES.table is None
    assert PICTURES.gallery(order) == order.context.pictures
