import json
from dataclasses import replace
from datetime import date

import demo
import pytest
from outside_readers import outside
from register_samples import add, happened, mounted, new_copy

from signage.control.register.store import open_register
from signage.ground.files import write_whole
from signage.model.copies import EventKind, Spot
from signage.model.current_sheet import CurrentSheet
from signage.produce.drawn_files import LIST_NAME
from signage.produce.recalling import close, notices, open_points, recall_of, recall_papers, set_aside
from signage.produce.released_list import RELEASED_LIST, released_list
from signage.produce.ward_forms import FormMaker

PdfReader = outside("pypdf").PdfReader

DAY = date(2026, 12, 20)
PROTOCOL = "clean-hands"
CURRENT = {
    (PROTOCOL, "en"): CurrentSheet(
        PROTOCOL, "en", "new", "BBBB-BBBB", date(2026, 12, 19), may_be_mounted=True, may_be_drawn=True
    ),
    (PROTOCOL, "ar"): CurrentSheet(PROTOCOL, "ar", None),
}


@pytest.fixture
def register(tmp_path):
    with open_register(tmp_path / "register.db") as opened:
        copies = opened.add_copies(
            [new_copy(PROTOCOL, tag, "old") for tag in ("en", "en", "ar", "en", "en")],
            date(2026, 11, 26),
            "icn",
        )
        opened.numbers = [copy.number for copy in copies]
        first, second, third, fourth, _ = opened.numbers
        add(
            opened,
            mounted(first, "s4", "lantern-bay"),
            mounted(second, "s1", "lantern-bay"),
            mounted(third, "s2", "lantern-bay"),
            replace(mounted(fourth, "", ""), spot=Spot(learner="L07")),
        )
        yield opened


def _recall(register):
    return recall_of(demo.project(), register, CURRENT, demo.project().library.protocols[PROTOCOL])


def test_a_recall_runs_from_the_list_to_its_end(register, tmp_path):
    first, second, third, fourth, fifth = register.numbers
    found = _recall(register)
    assert [each.state.copy.number for each in found.recalled] == [second, third, first, fourth]
    assert [state.copy.number for state in found.unused] == [fifth]
    assert notices(found.recalled) == (("ar", Spot("lantern-bay", "s2")),)
    project = demo.project()
    points = open_points(project, tmp_path, found, CURRENT)
    assert len(points) == 2
    assert "signage pages" in points[1]
    write_whole(tmp_path / "site" / RELEASED_LIST, released_list(CURRENT))
    add(
        register,
        happened(first, EventKind.REMOVED),
        happened(second, EventKind.DESTROYED),
        happened(third, EventKind.LOST, "Looked behind the door."),
    )
    (point,) = open_points(project, tmp_path, _recall(register), CURRENT)
    assert fourth in point
    assert first not in point
    add(register, happened(fourth, EventKind.REMOVED))
    found = _recall(register)
    assert open_points(project, tmp_path, found, CURRENT) == ()
    assert (found.outcome.share, len(found.outcome.done), found.recalled) == (1.0, 4, ())
    close(register, found, "icn", DAY)
    (report,) = register.reports("recall-closed")
    assert json.loads(report.content)["ends"][third][2] == "Looked behind the door."
    assert _recall(register).outcome.done == ()


def test_pages_of_the_earlier_state_keep_it_open(register, tmp_path):
    before = {key: replace(sheet, hash="old") for key, sheet in CURRENT.items()}
    write_whole(tmp_path / "site" / RELEASED_LIST, released_list(before))
    points = open_points(demo.project(), tmp_path, _recall(register), CURRENT)
    assert "in en, ar" in points[1]


def test_the_papers_say_where_to_walk_and_what_to_hang(register, tmp_path):
    papers = recall_papers(FormMaker(demo.project(), "en", DAY), _recall(register), CURRENT, tmp_path)
    assert [path.name for path in papers] == [
        "recall-clean-hands-en.pdf", "withdrawn-clean-hands-lantern-bay-s2-ar.pdf",
    ]  # fmt: skip
    words = "".join(page.extract_text() for page in PdfReader(papers[0]).pages)
    places = [words.index(number) for number in (*register.numbers[1:3], register.numbers[0], "L07")]
    assert places == sorted(places)
    assert "replaced by" in words
    assert "BBBB-BBBB" in words
    assert "Withdrawn. Ask." in PdfReader(papers[1]).pages[0].extract_text()


def test_earlier_prints_are_set_aside_and_others_stay(tmp_path):
    project = demo.project()
    protocol = project.library.protocols[PROTOCOL]
    files = {
        "en/old.pdf": (PROTOCOL, "AAAA-AAAA"),
        "en/now.pdf": (PROTOCOL, project.revision(protocol, "en")),
        "en/other.pdf": ("contact-room", "AAAA-AAAA"),
        "../outside.pdf": (PROTOCOL, "AAAA-AAAA"),
    }
    listed = []
    for name, (subject, revision) in files.items():
        write_whole(tmp_path / "output" / name, b"pdf")
        listed.append(
            {
                "path": name, "sha256": "", "protocol": subject, "locale": "en", "kind": "poster",
                "paper": "A4", "tone": "colour", "has_usual_paper": True, "of": "", "of_sha256": "",
                "copies": "",
                "revision": revision,
            }
        )  # fmt: skip
    output = tmp_path / "output"
    (output / LIST_NAME).write_text(json.dumps({"version": 1, "files": listed}))
    assert set_aside(project, output, protocol, CURRENT) == ("en/old.pdf",)
    there = sorted(path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*.pdf"))
    assert there == [
        "output/en/now.pdf", "output/en/other.pdf", "output/superseded/en/old.pdf", "outside.pdf",
    ]  # fmt: skip
    write_whole(output / "en/old.pdf", b"another")
    set_aside(project, output, protocol, CURRENT)
    assert (output / "superseded/en/old-2.pdf").read_bytes() == b"another"
