from dataclasses import replace

import demo

from signage.check.stand_in import ABOUT, stand_in_problems
from signage.ground.place import NOWHERE
from signage.ground.problem import Problem, Severity
from signage.produce.check import check_request, stand_in_requests
from signage.words.standin import STAND_INS

FOUND = Problem("SH-30", "shape-over-text", Severity.S1, "a block lies over 'x'", "", NOWHERE, locale="en-XA")


def test_what_a_stand_in_shows_is_a_warning_that_says_what_the_language_is():
    (told,) = stand_in_problems([FOUND, replace(FOUND, message="a block lies over 'y'")])
    assert told.severity is Severity.S2
    assert told.message.startswith("With words 40 % longer than the source (stand-in en-XA): a block lies")
    assert "2 such" in told.message


def test_what_does_not_fit_is_a_note_told_once_a_sheet_and_remarks_are_none():
    too_long = replace(FOUND, code="SH-1", sheet="cards")
    remark = replace(FOUND, code="SH-9", severity=Severity.S3)
    (told,) = stand_in_problems([too_long, replace(FOUND, sheet="cards"), remark])
    assert (told.code, told.severity) == ("SH-1", Severity.S3)
    assert [p.code for p in stand_in_problems([too_long, replace(FOUND, sheet="poster")])] == [
        "SH-1",
        "SH-30",
    ]


def test_every_protocol_is_tried_in_every_kind_and_stand_in_once():
    requests = stand_in_requests(demo.project())
    assert set(ABOUT) == set(STAND_INS) == {request.locale for request in requests}
    keys = [(r.locale, r.protocol, r.kind, r.part) for r in requests]
    assert len(keys) == len(set(keys))
    assert {(r.protocol, r.kind) for r in requests} == {
        (name, kind) for name in demo.project().library.protocols for kind in demo.project().kinds.usual
    }
    # the paper with least room: A4 of the demo's A1, A3 and A4
    assert {request.paper for request in requests} == {"A4"}


def test_a_sheet_in_a_stand_in_language_is_looked_at():
    for request in stand_in_requests(demo.project()):
        if (request.protocol, request.kind) == ("contact-room", "pocket-checklist"):
            assert check_request(demo.project(), request) == []
        if (request.protocol, request.locale, request.part) == ("layered-protection", "en-XA", "take-off"):
            (told,) = check_request(demo.project(), request)
            assert (told.code, told.severity) == ("SH-1", Severity.S3)
