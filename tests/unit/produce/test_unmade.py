"""A command that makes nothing says why; one that makes what was asked for says nothing."""

from dataclasses import replace

import demo
import pytest

from signage.model.library import LocaleState
from signage.produce.requests import Wanted
from signage.produce.unmade import reasons_for_nothing


def project(papers=("A3", "A4")):
    return replace(demo.project(), library=replace(demo.project().library, papers=papers))


@pytest.mark.parametrize(
    ("papers", "wanted", "reasons"),
    [
        (("A5",), Wanted(), ["of the papers of library.yaml (A5)"]),
        (
            ("A3", "A4"),
            Wanted(papers=("A5",)),
            [
                "No poster is made of --paper A5",
                "Step cards are made on A6",
                "Pocket checklists are folded from A4",
            ],
        ),
        (("A3",), Wanted(papers=("A3",), kinds=("step-cards",)), ["--paper A3. Leave --paper away"]),
        (("A3",), Wanted(papers=("A3",), kinds=("poster", "pocket-checklist")), ["Pocket checklists"]),
    ],
)
def test_each_kind_without_a_sheet_is_told_with_its_cure(papers, wanted, reasons):
    found = reasons_for_nothing(project(papers), wanted)
    assert len(found) == len(reasons)
    for reason, words in zip(found, reasons, strict=True):
        assert words in reason


@pytest.mark.parametrize(
    "wanted",
    [Wanted(), Wanted(papers=("A3",)), Wanted(papers=("A6",)), Wanted(papers=("A5",), kinds=("poster",))],
)
def test_a_paper_that_only_some_kinds_have_is_no_fault(wanted):
    assert reasons_for_nothing(project(), wanted) == ()


def test_a_library_without_a_language_in_use_says_so():
    library = demo.project().library
    locales = {tag: replace(each, state=LocaleState.IN_WORK) for tag, each in library.locales.items()}
    (reason,) = reasons_for_nothing(
        replace(demo.project(), library=replace(library, locales=locales)), Wanted()
    )
    assert "Set the state of a finished language to in-use" in reason
    assert reasons_for_nothing(demo.project(), Wanted(locales=("en-XA",))) == ()
