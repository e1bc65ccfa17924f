"""Sheets in every script of the sample sentences, every text as long as its budget allows."""

import re
from collections import Counter

import pytest
from samples import SAMPLES
from sheet_edits import found

from signage.check.sheet_rules import line_through_text, margins, shape_over_text, text_overlap
from signage.compose.refusal import TextTooLongError
from signage.ground.files import write_whole
from signage.load.starter import starter_files
from signage.produce.requests import Wanted, compose_request, requests_for
from signage.project import open_project
from signage.words import standin
from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.numerals import autonym

RULES = (line_through_text.RULE, margins.RULE, shape_over_text.RULE, text_overlap.RULE)
BUDGETS = {text.source: text.budget for text in FIXED_TEXTS.values()}
PLACEHOLDER = re.compile(r"\{[a-z][a-z_]*\}")
DENSE = {"zh", "ja", "ko"}
"""Their signs carry about two letters each: common practice, no source."""


def filled(tag):
    """Makes a text of sample words as long as the budget of its source, else as long as the source."""

    def make(source):
        bare = PLACEHOLDER.sub("", source)
        if not any(sign.isalpha() for sign in bare):
            return source
        room = BUDGETS.get(source, len(source)) // (2 if tag in DENSE else 1)
        holes = PLACEHOLDER.findall(source)
        room = max(2, room - sum(len(hole) + 1 for hole in holes))
        words = " ".join([SAMPLES[tag]] * (room // len(SAMPLES[tag]) + 2))
        cut = words[:room]
        if " " in cut and words[room] != " ":
            cut = cut[: cut.rindex(" ")]
        return " ".join([*holes, cut])

    return make


@pytest.fixture(scope="module")
def starter(tmp_path_factory):
    folder = tmp_path_factory.mktemp("starter")
    for name, data in starter_files().items():
        write_whole(folder / name, data)
    return folder


def test_words_of_the_programme_and_titles_fit_in_every_script(starter, monkeypatch):
    for tag in SAMPLES:
        if tag != "en":
            monkeypatch.setitem(standin.STAND_INS, tag, filled(tag))
            monkeypatch.setitem(standin.STAND_IN_NAMES, tag, autonym(tag))
    project = open_project(starter / "content", starter / "locales")
    faults = Counter()
    for request in requests_for(project, Wanted(locales=tuple(SAMPLES), papers=("A3", "A4", "A6"))):
        where = (request.locale, request.kind, request.paper)
        try:
            sheet = compose_request(project, request)
        except TextTooLongError as refusal:
            faults.update((*where, overflow.role) for overflow in refusal.overflows)
            continue
        faults.update((*where, overflow.role) for overflow in sheet.overflows)
        context = project.context(project.library.protocols[request.protocol], request.locale)
        faults.update((*where, problem.message) for rule in RULES for problem in found(rule, sheet, context))
    assert faults == {}
