from dataclasses import replace
from functools import lru_cache

import demo
import pytest
from changed_demo import changed_project, changed_sheet
from sheet_edits import KINDS, edited, found

from signage.check.sheet_rules.lost_field import RULE
from signage.compose.sheet_kind import Owed
from signage.compose.shown_fields import NEVER_LEFT_OUT, Duty
from signage.drawing.marks import Group, TextMark

CHANGES = {
    "rub-before-kit": {"when": "if-soiled", "caution": "Rings off first."},
    "gloves-on": {"when": "if-torn"},
    "soak-up": {"critical": True},
}
"""A narrow step with a condition and a caution, a tile with a condition, a bin without a letter."""


@lru_cache(maxsize=1)
def spill():
    made = changed_project(CHANGES, protocol="spill")
    return made, made.context(made.library.protocols["spill"], "en")


def spill_sheets():
    made, _ = spill()
    for paper in ("A1", "A3", "A4"):
        yield changed_sheet(made, "poster", "clean-up", paper=paper, protocol="spill")
    for paper in ("A6", "Letter"):
        yield changed_sheet(made, "step-cards", paper=paper, protocol="spill")
    yield changed_sheet(made, "pocket-checklist", paper="A4", protocol="spill")


def without(**wanted):
    """An edit that takes texts away: by role, by message, or by a part of their words."""

    def change(mark):
        if not isinstance(mark, TextMark):
            return mark
        is_meant = all(
            wanted[key] in (mark.text if key == "words" else getattr(mark, key) or "") for key in wanted
        )
        return None if is_meant else mark

    return change


def test_what_a_reader_must_not_miss_is_owed_by_every_kind():
    for kind in KINDS:
        if Owed.STEPS in kind.owes:
            assert all(kind.shows[field] is Duty.OWED for field in NEVER_LEFT_OUT), kind.name
    with pytest.raises(ValueError, match="so it shows headline"):
        replace(KINDS.of("poster"), shows={})


def test_sheets_with_conditions_cautions_and_bins_without_letters_carry_them():
    _, context = spill()
    for sheet in spill_sheets():
        assert found(RULE, sheet, context) == [], (sheet.kind, sheet.paper)


def test_each_thing_that_is_taken_away_is_found():
    _, context = spill()
    edits = {
        "condition": without(words="Only if soiled"),
        "container": without(words="Waste bag"),
        "stop rule": without(message="spill/phase/clean-up/rule"),
        "headline": without(message="spill/soak-up/text"),
        "time": without(message="spill/let-it-work/text"),
        "picture": lambda mark: None if isinstance(mark, Group) and mark.role == "picture" else mark,
        "caution": without(message="spill/soak-up/caution"),
        "detail": without(message="spill/soak-up/detail"),
        "why": without(message="spill/soak-up/why"),
        "critical": without(role="number"),
    }
    for sheet in spill_sheets():
        missed = {field for field, edit in edits.items() if not _tells(sheet, edit, field, context)}
        duties = KINDS.of(sheet.kind).shows
        assert missed == {field for field in edits if duties[field] is not Duty.OWED}, (
            sheet.kind,
            sheet.paper,
        )


def _tells(sheet, edit, field, context):
    return any(f"the {field} of" in problem.message for problem in found(RULE, edited(sheet, edit), context))


def test_a_poster_without_its_cautions_is_refused():
    """As posters were before: at no size did they carry a caution."""
    sheet = edited(demo.sheet(phase="take-off"), without(message="/caution"))
    problems = found(RULE, sheet, demo.context())
    assert {problem.step for problem in problems} == {
        step.id for step in demo.context().protocol.phases[1].steps if step.caution
    }


def test_a_pocket_checklist_says_where_its_cautions_stand():
    sheet = edited(demo.sheet("pocket-checklist", paper="A4"), without(words="Cautions:"))
    assert ["where they stand" in problem.message for problem in found(RULE, sheet, demo.context())] == [True]


def test_the_demo_loses_nothing():
    for tag in demo.LANGUAGES:
        for protocol in ("layered-protection", "clean-hands", "gone-wrong"):
            context = demo.context(tag, protocol)
            sheets = [
                demo.sheet("poster", tag, phase.id, "A4", protocol) for phase in context.protocol.phases
            ]
            sheets += [
                demo.sheet(kind, tag, "", "A4", protocol) for kind in ("step-cards", "pocket-checklist")
            ]
            for sheet in sheets:
                assert found(RULE, sheet, context) == [], (sheet.kind, tag)


def test_a_pocket_checklist_without_a_line_that_points_to_a_local_document_is_refused():
    context = demo.context("en", "layered-protection")
    whole = demo.sheet("pocket-checklist", paper="A4")
    sheet = edited(whole, without(message="layered-protection/hazard/fire-alarm"))
    (problem,) = found(RULE, sheet, context)
    assert "the line of hazard fire-alarm is missing" in problem.message
