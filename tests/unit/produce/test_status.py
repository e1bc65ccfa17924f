"""The status of a copy of the demo, as it is signed, printed, hung, changed and withdrawn."""

import pytest
from signing import DAY, SignedCopy

from signage.ground.kept import open_kept
from signage.model.copies import Copy, Event, EventKind, Spot, states_of
from signage.model.mark import Mark
from signage.produce.check import check_request
from signage.produce.kept import KeptResults
from signage.produce.requests import Wanted, requests_for
from signage.produce.signing import withdraw
from signage.produce.status import status_of_library

PROTOCOL = "content/protocols/clean-hands.yaml"


@pytest.fixture(scope="module")
def copy(tmp_path_factory):
    """P3 is signed in English and Arabic, for use; the tests follow one another."""
    made = SignedCopy(tmp_path_factory.mktemp("signed") / "ward")
    made.check_off("ar")
    made.sign()
    made.sign("ar", by="ipc-doctor")
    return made


def _status(copy, states=None, day=DAY):
    project = copy.project
    found = status_of_library(project, day, KeptResults(project), states)
    (protocol,) = [each for each in found.protocols if each.code == "P3"]
    return found, protocol, {each.locale: each for each in protocol.sheets}


def _hung(project, tag):
    protocol = project.library.protocols["clean-hands"]
    whole = project.content_hash(protocol, tag)
    copies = [
        Copy(f"LB-{tag}", "poster rub", protocol.id, tag, "A-B", whole, "none", DAY, "icn"),
        Copy(f"LB-{tag}-old", "poster rub", protocol.id, tag, "A-B", "0" * 64, "none", DAY, "icn"),
        Copy(f"LB-{tag}-gone", "poster rub", "gone", tag, "A-B", "0" * 64, "none", DAY, "icn"),
    ]
    events = [
        Event(number, each.number, EventKind.MOUNTED, DAY, "porter", "", Spot("lantern-bay", "s1"))
        for number, each in enumerate(copies, start=1)
    ]
    return states_of(copies, events)


def test_what_is_signed_is_released_and_says_who_and_when(copy):
    _found, protocol, sheets = _status(copy)
    told = {tag: (str(each.mark), each.signed_by, each.is_signed) for tag, each in sheets.items()}
    assert told == {
        "en": ("none", "ward-lead", True),
        "ar": ("none", "ipc-doctor", True),
        "fr": ("draft", "ward-lead", False),
        "am": ("draft", "ward-lead", False),
        "hi": ("draft", "ward-lead", False),
        "bn": ("proof", "ward-lead", False),
    }
    assert sheets["ar"].words.translated == 0 < sheets["fr"].words.translated
    assert sheets["bn"].words.missing > 0
    assert not sheets["bn"].is_in_use
    assert protocol.as_json()["locales"]["ar"]["signed_on"] == DAY.isoformat()


def test_copies_count_in_their_language_and_those_of_no_protocol_are_strays(copy):
    found, _protocol, sheets = _status(copy, _hung(copy.project, "ar"))
    assert (sheets["ar"].mounted, sheets["ar"].obsolete, sheets["en"].mounted) == (2, 1, 0)
    assert found.strays == {"gone": 1}
    commands = [task.command for task in found.tasks]
    assert set(commands[:2]) == {"signage recall gone", "signage recall P3"}


def test_sheets_that_a_check_has_seen_are_not_asked_for_again(copy, tmp_path):
    project = copy.project
    results = KeptResults(project, open_kept(tmp_path, is_fresh=False))
    request = requests_for(project, Wanted(protocols=("clean-hands",), locales=("en",)))[0]
    before = status_of_library(project, DAY, results, None).protocols
    results.keep_sheet_problems(request, check_request(project, request))
    after = status_of_library(project, DAY, results, None).protocols
    fewer = {each.code: (each.unseen, other.unseen) for each, other in zip(before, after, strict=True)}
    assert {code for code, (one, other) in fewer.items() if one != other} == {"P3"}
    assert fewer["P3"][0] - fewer["P3"][1] == 1


def test_a_review_that_is_due_ends_a_release_and_stands_among_the_duties(copy):
    late = copy.project.library.protocols["clean-hands"].review_by.replace(year=2030)
    found, _protocol, sheets = _status(copy, day=late)
    assert sheets["en"].mark is Mark.DRAFT
    assert any(task.what.startswith("P3: review overdue") for task in found.tasks)


def test_a_changed_word_asks_for_a_new_signature_and_a_withdrawal_for_none(copy):
    copy.replace(PROTOCOL, "why: Germs stay hidden under rings.", "why: Germs hide under rings.")
    found, _protocol, sheets = _status(copy)
    assert (sheets["en"].mark, sheets["en"].has_changed) == (Mark.DRAFT, True)
    assert (sheets["ar"].mark, sheets["ar"].words.doubtful) == (Mark.PROOF, 1)
    told = [(task.role, task.command) for task in found.tasks if task.what.startswith("P3: changed")]
    assert told == [("ward-lead or ipc-doctor", "signage approve P3 --as ward-lead")]
    project = copy.project
    protocol = project.library.protocols["clean-hands"]
    withdraw(project, protocol, None, project.library.people["ward-lead"], "A test.", DAY)
    found, _protocol, sheets = _status(copy)
    assert {each.is_withdrawn for each in sheets.values()} == {True}
    assert not any(task.what.startswith("P3: sign") for task in found.tasks)
