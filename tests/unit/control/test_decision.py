"""What may be printed, as a table: the duties of document control (ISO 9001:2015, 7.5.3) decide its order."""

from dataclasses import replace
from datetime import date, timedelta

from signage.control.decision import Reason, ReleaseFacts, decide, standing_against
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
WITHDRAWAL = Reason("P1 was withdrawn by ward-lead on 2026-12-01: 'wrong'.", Place("a.jsonl", 4, 1))
CHANGED = Reason("Changed since ward-lead signed its steps on 2026-12-01: step rub changed.")
DAMAGED = Reason("No sign-off counts: this line was changed.", Place("a.jsonl", 2, 1))
OBSTACLE = Reason("'x' has no glyph", Place("f.po", 3))

TABLE = (
    # change of the released facts, what prints, what prints when a proof is asked for, word in a reason
    ({}, Mark.NONE, Mark.NONE, None),
    ({"problems": (SLIGHT,)}, Mark.NONE, Mark.NONE, None),
    # row 0: withdrawn comes before everything, and no proof is printed either
    ({"withdrawal": WITHDRAWAL}, Mark.REFUSED, Mark.REFUSED, "a.jsonl:4:1: P1 was withdrawn"),
    ({"withdrawal": WITHDRAWAL, "problems": (GRAVE,)}, Mark.REFUSED, Mark.REFUSED, "withdrawn"),
    ({"withdrawal": WITHDRAWAL, "is_demo": True}, Mark.REFUSED, Mark.REFUSED, "withdrawn"),
    # row 1
    ({"obstacles": (OBSTACLE,)}, Mark.REFUSED, Mark.REFUSED, "f.po:3"),
    ({"obstacles": (OBSTACLE,), "is_in_use": False}, Mark.REFUSED, Mark.REFUSED, "no glyph"),
    # row 2
    ({"is_in_use": False}, Mark.REFUSED, Mark.PROOF, "in work"),
    ({"gaps": ("p/a/text", "p/b/text")}, Mark.REFUSED, Mark.PROOF, "2 texts"),
    ({"gaps": ("p/a/text",), "causes": (HOLE,)}, Mark.REFUSED, Mark.PROOF, "f.po:3: WD-6 {time} is missing"),
    ({"gaps": ("p/a/text",) * 4, "causes": (HOLE,)}, Mark.REFUSED, Mark.PROOF, "f.po:3: 4 texts"),
    # rows 3 and 4
    ({"problems": (GRAVE,)}, Mark.REFUSED, Mark.PROOF, "p.yaml:7:9: HH-1"),
    ({"problems": (LESSER, GRAVE)}, Mark.REFUSED, Mark.PROOF, "HH-1"),
    ({"problems": (GRAVE,), "is_demo": True}, Mark.REFUSED, Mark.PROOF, "HH-1"),
    ({"problems": (LESSER,)}, Mark.DRAFT, Mark.DRAFT, "HH-2"),
    # row 5
    ({"has_checked_words": False}, Mark.DRAFT, Mark.DRAFT, "second person"),
    ({"is_order_signed": False}, Mark.DRAFT, Mark.DRAFT, "signed the order"),
    ({"are_words_signed": False}, Mark.DRAFT, Mark.DRAFT, "words in fr"),
    (
        {"is_order_signed": False, "are_words_signed": False, "uncounted": (DAMAGED,)},
        Mark.DRAFT,
        Mark.DRAFT,
        "a.jsonl:2:1: No sign-off counts",
    ),
    ({"uncounted": (DAMAGED,)}, Mark.NONE, Mark.NONE, None),
    # row 6
    ({"changes": (CHANGED,)}, Mark.DRAFT, Mark.DRAFT, "step rub changed"),
    ({"changes": (CHANGED,), "is_order_signed": False}, Mark.DRAFT, Mark.DRAFT, "signed the order"),
    # rows 7 to 10
    ({"today": date(2027, 5, 31)}, Mark.NONE, Mark.NONE, None),
    ({"today": date(2027, 6, 1)}, Mark.DRAFT, Mark.DRAFT, "overdue"),
    ({"today": date(2027, 6, 1), "changes": (CHANGED,)}, Mark.DRAFT, Mark.DRAFT, "step rub changed"),
    ({"today": date(2027, 6, 1), "is_demo": True}, Mark.DRAFT, Mark.DRAFT, "overdue"),
    ({"is_demo": True}, Mark.DEMONSTRATION, Mark.DEMONSTRATION, None),
    ({"is_demo": True, "are_words_signed": False}, Mark.DRAFT, Mark.DRAFT, "words in fr"),
)


def test_the_table_of_release():
    for change, unasked, asked, word in TABLE:
        decision = decide(replace(RELEASED, **change))
        assert decision.granted(wants_proof=False) is unasked, change
        assert decision.granted(wants_proof=True) is asked, change
        assert decision.is_withdrawn == ("withdrawal" in change), change
        told = " ".join(map(str, decision.reasons))
        assert (word in told) if word else (told == ""), (change, told)


def test_no_wish_makes_more_of_a_sheet_than_it_is():
    """A proof stands in for a refusal; asking for one never lifts a draft."""
    for change, unasked, asked, _word in TABLE:
        order = [Mark.REFUSED, Mark.PROOF, Mark.DRAFT, Mark.DEMONSTRATION, Mark.NONE]
        assert order.index(asked) <= max(order.index(unasked), order.index(Mark.PROOF)), change


def test_a_day_alone_turns_a_release_into_a_draft():
    marks = [
        decide(replace(RELEASED, today=RELEASED.review_by + timedelta(days=n))).mark for n in (-1, 0, 1, 400)
    ]
    assert marks == [Mark.NONE, Mark.NONE, Mark.DRAFT, Mark.DRAFT]


def test_what_stands_against_a_signature_is_told_whole_and_each_with_its_cure():
    """Signing asks for all of it at once; that it is unsigned, changed or withdrawn is what signing mends."""
    facts = replace(
        RELEASED,
        problems=(LESSER, GRAVE, SLIGHT),
        has_checked_words=False,
        is_order_signed=False,
        are_words_signed=False,
        today=date(2027, 6, 1),
        withdrawal=WITHDRAWAL,
        changes=(CHANGED,),
    )
    told = [(str(reason), cure) for reason, cure in standing_against(facts)]
    assert [
        words in reason
        for (reason, _), words in zip(told, ("HH-1", "HH-2", "second person", "overdue"), strict=True)
    ] == [True] * 4
    assert all(cure.endswith(".") for _, cure in told)
    assert standing_against(RELEASED) == ()
