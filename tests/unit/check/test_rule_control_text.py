from dataclasses import replace

import demo
from sheet_edits import edited, found

from signage.check.sheet_rules.control_text import RULE
from signage.drawing.marks import TextMark
from signage.model.mark import Mark
from signage.produce.requests import SheetRequest, compose_request


def test_a_sheet_without_its_revision_code_is_found():
    revision = demo.sheet(phase="take-off").revision

    def cut(mark):
        return None if isinstance(mark, TextMark) and revision in mark.text else mark

    problems = found(RULE, edited(demo.sheet(phase="take-off"), cut), demo.context())
    assert any(revision in problem.message for problem in problems)


def test_a_proof_names_the_gap_in_place_of_owner_and_date():
    project = demo.project()
    own = project.library.locales["fr"]
    library = replace(project.library, locales={**project.library.locales, "ha": replace(own, tag="ha")})
    bare = replace(project, library=library)
    request = SheetRequest("chair-turnaround", "ha", "step-cards", "", "A6")
    sheet = compose_request(bare, request, Mark.PROOF)
    context = bare.context(library.protocols["chair-turnaround"], "ha", mark=Mark.PROOF)
    assert not found(RULE, sheet, context)


def test_every_sheet_says_what_it_is_in_its_own_script():
    for tag in demo.LANGUAGES:
        assert not found(RULE, demo.sheet(tag=tag, phase="take-off"), demo.context(tag))
        assert not found(RULE, demo.sheet("step-cards", tag, paper="A6"), demo.context(tag))
        assert not found(RULE, demo.sheet("pocket-checklist", tag, paper="A4"), demo.context(tag))
