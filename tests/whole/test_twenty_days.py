"""Document control from the first draft to the closed recall, through the commands alone.

The story is the demo's own: a protocol is drawn as a draft, signed in four languages, hung up, revised; three
languages become doubtful, seven copies must come down, and a round finds one old sheet.
"""

import csv
import json
import os
import re
import shutil
import subprocess
import sys
from datetime import UTC, datetime

import pytest
from demo import ROOT
from outside_readers import outside

DAY_1, DAY_20, DAY_25 = (datetime(2026, 12, day, 8, tzinfo=UTC) for day in (1, 20, 25))
LANGUAGES = ("fr", "ar", "am")
STATE_WORDS = {
    "draft": "Draft. Not for clinical use.",
    "demonstration": "Demonstration. Not for clinical use.",
}


class Ward:
    """The demo in a folder of its own, and the day on which a command runs."""

    def __init__(self, folder):
        self.folder = folder
        self.day = DAY_1

    def run(self, *arguments, expect=0):
        done = subprocess.run(
            [sys.executable, "-m", "signage", *arguments],
            check=False,
            cwd=self.folder,
            capture_output=True,
            text=True,
            encoding="utf-8",
            env={
                **os.environ,
                "PYTHONIOENCODING": "utf-8",
                "COLUMNS": "200",
                "SOURCE_DATE_EPOCH": str(int(self.day.timestamp())),
            },
            timeout=300,
        )
        assert "Traceback" not in done.stderr
        assert done.returncode == expect, f"{arguments}\n{done.stdout}{done.stderr}"
        return done.stdout + done.stderr

    def json(self, *arguments, expect=0):
        told = self.run(*arguments, "--format", "json", expect=expect)
        return json.loads(told[told.index("{") :])

    def sign(self, *of):
        """Ask for the review, read its code from the PDF as a person does, and sign with it."""
        review = self.folder / "review.pdf"
        self.run("approve", "P3", *of, "--as", "ward-lead", "--review", "review.pdf")
        code = re.search(r"--yes ([A-Z0-9]+)", text_of(review)).group(1)
        return self.run("approve", "P3", *of, "--as", "ward-lead", "--yes", code)

    def posters(self, *of, copies=(), expect=0):
        return self.json(
            "draw", "--protocol", "P3", *of, "--sheet", "poster", "--paper", "A4", *copies, expect=expect
        )

    def said_on(self, sheet):
        return text_of(self.folder / sheet["path"])


def text_of(path):
    reader = outside("pypdf")
    return " ".join(" ".join(page.extract_text() for page in reader.PdfReader(path).pages).split())


@pytest.fixture
def ward(tmp_path):
    for name in ("content", "locales"):
        shutil.copytree(ROOT / name, tmp_path / name)
    return Ward(tmp_path)


def filled(form, answers):
    """The form of a round as somebody filled it in: all is well but what the answers say, by number."""
    with form.open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    checks = ("present", "revision", "readable", "clean", "place")
    for row in rows:
        row.update(dict.fromkeys(checks, "yes") | answers.get(row["number"], {}))
    with form.open("w", encoding="utf-8", newline="") as stream:
        table = csv.DictWriter(stream, rows[0])
        table.writeheader()
        table.writerows(rows)
    return form


ENGLISH = ("--locale", "en")
HANDS = "Let hands dry", "Let both hands dry"


def draft_is_signed(ward):
    """Drawn as a draft, which may not hang; signed by another role than the one that wrote it."""
    sheets = ward.posters(*ENGLISH)["sheets"]
    assert {sheet["mark"] for sheet in sheets} == {"draft"}
    assert all(STATE_WORDS["draft"] in ward.said_on(sheet) for sheet in sheets)
    assert "icn" in ward.run("approve", "P3", "--as", "icn", "--yes", "AAAAAA", expect=1)
    ward.sign()
    for tag in LANGUAGES:
        ward.run("words", "check-off", tag, "--protocol", "P3", "--as", "language-reader")
        ward.sign("--locale", tag)
    for sheet in ward.posters(*ENGLISH, copies=("--copies", "3"))["sheets"]:
        assert sheet["mark"] == "demonstration"
        said = ward.said_on(sheet)
        assert STATE_WORDS["demonstration"] in said
        assert "draft" not in said.lower()
        assert "ward-lead" in said
    for tag in LANGUAGES:
        ward.posters("--locale", tag, copies=("--copies", "1"))


def copies_hang(ward):
    """Five on walls and two in pockets: their numbers; a slip of the pen is answered with the right one."""
    numbers = {}
    for copy in ward.json("register", "list")["copies"]:
        numbers.setdefault((copy["locale"], copy["sheet"]), []).append(copy["number"])
    rub = numbers["en", "poster rub"]
    slots = dict(zip(rub, ("s1", "s4"), strict=False))
    for tag, slot in zip(LANGUAGES, ("s2", "s3", "door-a"), strict=True):
        slots[numbers[tag, "poster rub"][0]] = slot
    for number, slot in slots.items():
        ward.run("register", "mount", number, "--slot", slot, "--as", "night-porter")
    pockets = {rub[2]: "L03", numbers["fr", "poster wash"][0]: "L05"}
    for number, learner in pockets.items():
        ward.run("register", "mount", number, "--learner", learner, "--as", "night-porter")
    slip = rub[0][:-1] + ("X" if rub[0][-1] != "X" else "Y")
    assert rub[0] in ward.run("register", "mount", slip, "--slot", "s2", "--as", "night-porter", expect=1)
    assert "No mounted copy" in ward.run("recall", "P3")
    return [*slots, *pockets]


def protocol_is_revised(ward):
    """One step in other words: the draft is back by itself, and three languages are doubtful."""
    protocol = ward.folder / "content" / "protocols" / "clean-hands.yaml"
    text = protocol.read_text(encoding="utf-8")
    assert f"text: {HANDS[0]}" in text
    text = text.replace(f"text: {HANDS[0]}", f"text: {HANDS[1]}").replace("\nrevision: 1", "\nrevision: 2")
    protocol.write_text(text, encoding="utf-8")
    ward.run("words", "update")
    others = [part for tag in LANGUAGES for part in ("--locale", tag)]
    revised = ward.posters(*ENGLISH, *others, expect=1)
    assert {(sheet["locale"], sheet["mark"]) for sheet in revised["sheets"]} == {("en", "draft")}
    assert {refusal["locale"] for refusal in revised["refused"]} == set(LANGUAGES)
    ward.sign()


def copies_are_called_back(ward, copies):
    """All seven, in the order of a walk, with a notice where nothing takes the place of a sheet."""
    ward.run("pages", expect=1)  # three languages of it have none
    recall = ward.run("recall", "P3", expect=1)
    assert "7 copies of P3 must come down" in recall
    listed = re.findall(r"(?m)^ +(LB-\d{4}-\w)", recall)
    assert sorted(listed) == sorted(copies)
    assert len(list((ward.folder / "output" / "forms").glob("withdrawn-*.pdf"))) == len(LANGUAGES)
    assert list((ward.folder / "output" / "superseded").rglob("*.pdf"))
    assert "Still out" in ward.run("recall", "P3", "--close", "--as", "icn", expect=1)


def round_finds_the_forgotten_one(ward, copies):
    """Six are taken down; the seventh hangs behind a door until a round finds it, and the recall closes."""
    forgotten, *others = copies
    for number in others:
        ward.run("register", "remove", number, "--as", "night-porter")
    ward.day = DAY_25
    ward.run("audit", "round")
    answers = {forgotten: {"revision": "no", "remark": "behind a door"}}
    form = filled(ward.folder / "output" / "forms" / "audit.csv", answers)
    assert forgotten in ward.run("audit", "result", str(form), "--as", "icn", expect=1)
    ward.run("register", "remove", forgotten, "--destroyed", "--as", "night-porter")
    ward.run("pages", expect=1)
    assert "closed" in ward.run("recall", "P3", "--close", "--as", "icn").lower()
    states = {copy["state"] for copy in ward.json("register", "list")["copies"]}
    assert states <= {"printed", "removed", "destroyed"}


def test_from_draft_to_signed_sheet_and_back_from_the_wall(ward):
    draft_is_signed(ward)
    copies = copies_hang(ward)
    ward.day = DAY_20
    protocol_is_revised(ward)
    copies_are_called_back(ward, copies)
    round_finds_the_forgotten_one(ward, copies)
