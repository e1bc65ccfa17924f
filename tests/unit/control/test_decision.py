"""What may be printed, as a table: the duties of document control (ISO 9001:2015, 7.5.3) decide its order."""

from dataclasses import replace
from datetime import date, timedelta

from signage.control.decision import Reason, ReleaseFacts, decide
from signage.ground.place import Place
from signage.ground.problem import Problem, Severity
from signage.model.mark import Mark

RELEASED = ReleaseFacts(
    locale="fr",
    today=date(2026, 11, 28),
    review_by=date(2027, 5, 31),
    has_checked_words=True,
    is_order_signed=True,
    are_words_signed=True,
)
GRAVE = Problem(
    "HH-1", "no-hygiene", Severity.S1, "No hand hygiene.", place=Place("p.yaml", 7, 9), step="hood-off"
)
LESSER = replace(GRAVE, code="HH-2", severity=Severity.S2)
SLIGHT = replace(GRAVE, code="ST-4", severity=Severity.S3)
HOLE = Problem(
    "WD-6", "hole", Severity.S1, "{time} is missing", place=Place("f.po", 3), locale="fr", text="p/a/text"
)
OBSTACLE = Reason("'x' has no glyph", Place("f.po", 3))

TABLE = (
    # change of the released facts, what prints, what prints when a proof is asked for, word in a reason
    ({}, Mark.NONE, Mark.NONE, None),
    ({"problems": (SLIGHT,)}, Mark.NONE, Mark.NONE, None),
    ({"obstacles": (OBSTACLE,)}, Mark.REFUSED, Mark.REFUSED, "f.po:3"),
    ({"obstacles": (OBSTACLE,), "is_in_use": False}, Mark.REFUSED, Mark.REFUSED, "no glyph"),
    ({"is_in_use": False}, Mark.REFUSED, Mark.PROOF, "in work"),
    ({"gaps": ("p/a/text", "p/b/text")}, Mark.REFUSED, Mark.PROOF, "2 texts"),
    ({"gaps": ("p/a/text",), "causes": (HOLE,)}, Mark.REFUSED, Mark.PROOF, "f.po:3: WD-6 {time} is missing"),
    ({"gaps": ("p/a/text",) * 4, "causes": (HOLE,)}, Mark.REFUSED, Mark.PROOF, "f.po:3: 4 texts"),
    ({"problems": (GRAVE,)}, Mark.REFUSED, Mark.PROOF, "p.yaml:7:9: HH-1"),
    ({"problems": (LESSER, GRAVE)}, Mark.REFUSED, Mark.PROOF, "HH-1"),
    ({"problems": (LESSER,)}, Mark.DRAFT, Mark.DRAFT, "HH-2"),
    ({"has_checked_words": False}, Mark.DRAFT, Mark.DRAFT, "second person"),
    ({"is_order_signed": False}, Mark.DRAFT, Mark.DRAFT, "signed the order"),
    ({"are_words_signed": False}, Mark.DRAFT, Mark.DRAFT, "words in fr"),
    ({"today": date(2027, 5, 31)}, Mark.NONE, Mark.NONE, None),
    ({"today": date(2027, 6, 1)}, Mark.DRAFT, Mark.DRAFT, "overdue"),
)


def test_the_table_of_release():
    for change, unasked, asked, word in TABLE:
        decision = decide(replace(RELEASED, **change))
        assert decision.granted(wants_proof=False) is unasked, change
        assert decision.granted(wants_proof=True) is asked, change
        told = " ".join(map(str, decision.reasons))
        assert (word in told) if word else (told == ""), (change, told)


def test_no_wish_makes_more_of_a_sheet_than_it_is():
    """A proof stands in for a refusal; asking for one never lifts a draft."""
    for change, unasked, asked, _word in TABLE:
        order = [Mark.REFUSED, Mark.PROOF, Mark.DRAFT, Mark.NONE]
        assert order.index(asked) <= max(order.index(unasked), order.index(Mark.PROOF)), change


def test_a_day_alone_turns_a_release_into_a_draft():
    marks = [
        decide(replace(RELEASED, today=RELEASED.review_by + timedelta(days=n))).mark for n in (-1, 0, 1, 400)
    ]
    assert marks == [Mark.NONE, Mark.NONE, Mark.DRAFT, Mark.DRAFT]
