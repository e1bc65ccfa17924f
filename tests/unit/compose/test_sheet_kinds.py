"""A kind of sheet is one value: whoever asks for, draws, checks or explains sheets knows it by that."""

import pickle
import shutil
import sys
from dataclasses import replace
from datetime import date

import demo
import door_sign
import pytest
from door_sign import DOOR_SIGN

from signage import compose
from signage.check.registry import all_sheet_rules
from signage.check.rule import SheetSubject
from signage.cli.choice import chosen
from signage.compose.kinds_document import kinds_document, kinds_help
from signage.compose.sheet_kind import Offer
from signage.compose.sheet_kinds import read_sheet_kinds
from signage.produce.draw import draw_all, jobs_for
from signage.produce.links import payloads_for
from signage.produce.release import Releases
from signage.produce.requests import Wanted, compose_request, context_of, requests_for
from signage.produce.unmade import reasons_for_nothing

LANGUAGES = ("en", "ar", "hi", "fr")
ASKED = Wanted(("layered-protection",), LANGUAGES, ("door-sign",))


def project(*kinds):
    return replace(demo.project(), own_kinds=kinds)


def every_finding(made, request):
    sheet = compose_request(made, request)
    subject = SheetSubject(sheet, context_of(made, request), made.kinds.of(sheet.kind))
    return [problem for rule in all_sheet_rules() for problem in rule.find(subject)]


def test_a_kind_from_outside_is_asked_for_drawn_and_checked_like_any_other(tmp_path):
    made = project(DOOR_SIGN)
    requests = requests_for(made, ASKED)
    zones = made.library.wards[made.library.protocols["layered-protection"].ward].zones
    assert [(each.locale, each.part, each.paper) for each in requests] == [
        (tag, zone, "A4") for tag in LANGUAGES for zone in zones
    ]
    jobs = jobs_for(Releases(made, date(2026, 12, 1)), requests)
    drawn = list(draw_all(made, jobs, tmp_path, workers=1))
    assert {(each.sheet_kind, each.mark.value) for each in drawn} == {("door-sign", "draft")}
    assert all(each.path.read_bytes().startswith(b"%PDF") for each in drawn)
    assert len({each.path for each in drawn}) == len(requests)
    for request in requests:
        assert every_finding(made, request) == [], request


def test_a_kind_from_outside_is_known_by_codes_messages_help_and_arguments():
    made = project(DOOR_SIGN)
    (payload,) = payloads_for(made, requests_for(made, replace(ASKED, locales=("en",))))
    assert payload.sheet == "door-sign"
    (reason,) = reasons_for_nothing(made, replace(ASKED, papers=("A3",)))
    assert reason.startswith("Door signs are made on A4 or Letter, not with --paper A3.")
    assert "door-sign (the name of a zone, for its door)" in kinds_help(made.kinds)
    assert "| `door-sign` | the name of a zone, for its door | zone | A4, Letter |" in kinds_document(
        made.kinds
    )
    assert chosen(made, None, None, ["door-sign"], None, "colour").kinds == ("door-sign",)
    assert {each.kind for each in requests_for(made, Wanted())} == set(demo.project().kinds.usual)


def test_a_kind_that_is_made_unasked_is_in_every_run():
    made = project(replace(DOOR_SIGN, offer=Offer.USUAL))
    wanted = Wanted(locales=("en",))
    signs = [each for each in requests_for(made, wanted) if each.kind == "door-sign"]
    wards = {protocol.ward for protocol in made.library.protocols.values()}
    assert len(signs) == sum(len(made.library.wards[ward].zones) for ward in wards), "once a ward"


def test_names_are_given_once_and_kinds_reach_other_processes():
    with pytest.raises(ValueError, match="two kinds of sheet are called poster"):
        _ = project(replace(DOOR_SIGN, name="poster")).kinds
    kinds = project(DOOR_SIGN).kinds
    assert pickle.loads(pickle.dumps(kinds)) == kinds  # noqa: S301 - our own bytes
    assert read_sheet_kinds().names == (
        "poster",
        "step-cards",
        "pocket-checklist",
        "pictures",
        "picture-trial",
    )


def test_one_more_file_is_one_more_kind(tmp_path, monkeypatch):
    shutil.copyfile(door_sign.__file__, tmp_path / "door_sign_sheet_kind.py")
    monkeypatch.setattr(compose, "__path__", [*compose.__path__, str(tmp_path)])
    try:
        assert "door-sign" in read_sheet_kinds().names
    finally:
        sys.modules.pop("signage.compose.door_sign_sheet_kind", None)


def test_the_documentation_lists_the_kinds_as_they_are():
    written = (demo.ROOT / "docs" / "sheets.md").read_text(encoding="utf-8")
    assert written == kinds_document(read_sheet_kinds()), "run: signage sheets > docs/sheets.md"


def test_sheets_about_pictures_keep_the_rules_of_all_sheets():
    """They are made on request only, so no check of the library composes them."""
    made = demo.project()
    for tag in (*demo.LANGUAGES, "en-XA"):
        wanted = Wanted(("clean-hands",), (tag,), ("pictures", "picture-trial"))
        for request in requests_for(made, wanted):
            assert every_finding(made, request) == [], request
