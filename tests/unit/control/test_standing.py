"""Which sign-offs hold, as a table of states and records."""

from dataclasses import replace
from types import SimpleNamespace

from record_samples import DAY, ledger_of, record

from signage.control.records import RecordKind
from signage.control.standing import judge, states_after
from signage.model.library import PolicyValue
from signage.model.people import Role


def library(**more):
    """As much of a library as sign-offs ask for."""
    people = {"ward-lead": Role(id="ward-lead", initials="WL", signs=True)}
    return SimpleNamespace(**{"policy": {}, "people": people, "is_demo": False, **more})


P, W = record(RecordKind.PROTOCOL), record(RecordKind.WITHDRAWAL)
EN, AR = record(RecordKind.LANGUAGE, locale="en"), record(RecordKind.LANGUAGE, locale="ar")
WAR = record(RecordKind.WITHDRAWAL, locale="ar")

TABLE = (
    # records, is the order signed, languages signed, languages withdrawn (None: all)
    ((), False, "", []),
    ((P,), True, "", []),
    ((EN,), False, "en", []),
    ((P, EN), True, "en", []),
    ((P, EN, AR), True, "ar en", []),
    ((P, EN, AR, W), False, "", [None]),
    ((W,), False, "", [None]),
    ((P, EN, W, P), True, "", []),
    ((P, EN, W, EN), False, "en", [None]),
    ((P, EN, W, P, EN), True, "en", []),
    ((P, EN, AR, WAR), True, "en", ["ar"]),
    ((P, EN, AR, WAR, P), True, "en", ["ar"]),
    ((P, EN, AR, WAR, AR), True, "ar en", []),
    ((P, EN, AR, WAR, W), False, "", [None, "ar"]),
    ((P, EN, AR, WAR, W, P), True, "", ["ar"]),
)


def test_the_states_of_a_subject():
    for records, is_signed, languages, withdrawn in TABLE:
        state = states_after(records).get("P1")
        if state is None:
            assert records == ()
            continue
        assert (state.order is not None) == is_signed, records
        assert " ".join(sorted(state.words)) == languages, records
        assert sorted(state.withdrawn, key=str) == sorted(withdrawn, key=str), records
        assert (state.withdrawal("ar") is None) == (not withdrawn), records
        assert (state.withdrawal("fr") is None) == (None not in withdrawn), records


def test_subjects_do_not_touch_each_other():
    states = states_after((P, record(RecordKind.WITHDRAWAL, "P2"), replace(EN, protocol="ward/bay")))
    assert states["P1"].order
    assert states["P2"].withdrawal("en")
    assert "en" in states["ward/bay"].words


def test_what_a_demonstration_or_an_author_signed_does_not_count():
    shown = replace(P, demo=True)
    own = replace(P, by="icn")
    both = replace(P, by="icn", author="waste-officer, icn")
    for each, in_demo, elsewhere in (
        (P, True, True),
        (shown, True, False),
        (own, False, False),
        (both, False, False),
    ):
        for is_demo, counts in ((True, in_demo), (False, elsewhere)):
            sign_offs = judge(ledger_of(each), library(is_demo=is_demo))
            assert (sign_offs.of("P1").order is not None) == counts, (each, is_demo)
            assert counts or sign_offs.discounted[1]


def test_where_the_policy_wants_signatures_nothing_counts_without_one():
    value = PolicyValue(id="signatures-required", value=True, source="x", owner="y")
    assert "wants signatures" in judge(ledger_of(P), library(policy={value.id: value})).discounted[1]


def test_codes_are_remembered_with_what_they_stand_for():
    sign_offs = judge(ledger_of(P, replace(P, content="c" * 64, code="ABCD"), AR, W), library())
    assert sign_offs.contents_by_code("P1", None) == {"3YH6": "a" * 64, "ABCD": "c" * 64}
    assert sign_offs.contents_by_code("P1", "ar") == {"3YH6": "a" * 64}
    assert sign_offs.last("P1", None).code == "ABCD"
    assert sign_offs.last("P1", "fr") is None


def test_a_day_is_what_it_says():
    assert P.as_json()["on"] == DAY.isoformat()
