"""The tour of README.md: P3 is signed, revised, signed anew and withdrawn in a copy, by commands alone."""

import json
import re

import pytest
from outside_readers import outside

PdfReader = outside("pypdf").PdfReader

PROTOCOL = "content/protocols/clean-hands.yaml"
DRAW = ("draw", "--protocol", "P3", "--locale", "en", "--sheet", "pocket-checklist", "--format", "json")


def approve(run, demo):
    """Read the review, then sign with the code that it shows."""
    run(demo, "approve", "P3", "--as", "ward-lead", "--review", "review.pdf")
    review = " ".join(page.extract_text() for page in PdfReader(demo / "review.pdf").pages)
    code = re.search(r"--yes (\w{6})", review)[1]
    run(demo, "approve", "P3", "--as", "ward-lead", "--yes", code)
    return " ".join(review.split())


def drawn(run, demo, expect=0):
    told = json.loads(run(demo, *DRAW, expect=expect).stdout)
    if told["refused"]:
        return "refused", told["refused"][0]["why"], ""
    (sheet,) = told["sheets"]
    pages = PdfReader(demo / sheet["path"]).pages
    return sheet["mark"], " ".join(sheet["reasons"]), " ".join(page.extract_text() for page in pages)


def test_p3_is_signed_revised_signed_anew_and_withdrawn(run, demo):
    assert drawn(run, demo)[0] == "draft"
    review = approve(run, demo)
    for words in (
        "Review before signing: P3",
        "What stands against it Nothing.",
        "signed for the first time",
    ):
        assert words in review, words
    mark, _, said = drawn(run, demo)
    assert (mark, "DRAFT" in said) == ("demonstration", False)
    assert "Demonstration. Not for clinical use." in said

    path = demo / PROTOCOL
    path.write_text(
        path.read_text(encoding="utf-8").replace("Take a palmful", "Take one palmful", 1), encoding="utf-8"
    )
    mark, reasons, said = drawn(run, demo)
    assert (mark, "DRAFT" in said) == ("draft", True)
    assert "Changed since ward-lead signed its steps on 2026-11-26: step take-palmful changed." in reasons
    told = run(demo, *DRAW[:-2]).stderr
    assert "Draft that was signed: clean-hands, en" in told

    assert "step take-palmful changed" in approve(run, demo)
    assert drawn(run, demo)[0] == "demonstration"
    run(demo, "withdraw", "P3", "--as", "ward-lead", "--reason", "An outbreak.")
    mark, why, _ = drawn(run, demo, expect=1)
    assert mark == "refused"
    assert "P3 was withdrawn by ward-lead on 2026-11-26: 'An outbreak.'" in why
    told = json.loads(run(demo, "approvals", "list", "--format", "json").stdout)
    assert [each["kind"] for each in told["records"]] == ["protocol", "language"] * 2 + ["withdrawal"]


@pytest.mark.parametrize(
    ("arguments", "expect", "words"),
    [
        (("approve", "P33", "--as", "ward-lead"), 2, "There is no protocol 'P33'"),
        (("approve", "P3"), 2, "Say with --as which role did it. These may sign: ward-lead, ipc-doctor."),
        (("approve", "P3", "--as", "ward-led"), 2, "Did you mean 'ward-lead'?"),
        (("approve", "P3", "--as", "icn"), 1, "The role icn may not sign."),
        (("approve", "P3", "--as", "ward-lead"), 2, "nobody is there to be asked"),
        (("approve", "P3", "--as", "ward-lead", "--yes", "AAAAAA"), 2, "Nothing was signed."),
        (("approve", "P3", "--locale", "ar", "--as", "ward-lead"), 1, "signage words check-off"),
        (("withdraw", "P3", "--as", "ward-lead"), 2, "A withdrawal needs its reason"),
        (("words", "check-off", "ar", "--protocol", "P3", "--as", "language-lead"), 1, "may not check"),
    ],
)
def test_what_a_newcomer_gets_wrong_is_told_with_what_to_do(run, demo, arguments, expect, words):
    done = run(demo, *arguments, expect=expect)
    assert words in done.stderr, done.stderr
    assert not (demo / "content/approvals.jsonl").exists()
