"""From signed sheets to the wall and back: numbered copies, a revision, a recall, an audit, the end."""

import csv
import json
from datetime import date

NEXT = "1797292800"
"""2026-12-15: the day of the second revision."""


def _json(run, ward, *words, **options):
    return json.loads(run(ward, *words, "--format", "json", **options).stdout)


def _sign(run, ward, **options):
    asked = ("approve", "G1", "--as", "ward-lead")
    code = _json(run, ward, *asked, **options)["confirmation"]
    run(ward, *asked, "--yes", code, **options)


def test_a_revised_protocol_comes_back_from_every_wall(run, ward):
    draw = ("draw", "--protocol", "G1", "--locale", "en", "--sheet", "pocket-checklist", "--copies", "4")
    assert [sheet["numbers"] for sheet in _json(run, ward, *draw)["sheets"]] == [[]]
    assert _json(run, ward, "register", "list")["copies"] == []
    _sign(run, ward)
    (sheet,) = _json(run, ward, *draw)["sheets"]
    assert (sheet["mark"], sheet["copies"]) == ("none", 4)
    first, second, third, fourth = sheet["numbers"]
    (ward / "mounted.csv").write_text(
        f"number;slot;learner\n{first};way-out-wall;\n{second};corridor-wall;\n{third};;L07\n"
    )
    run(ward, "register", "mount", "--from", "mounted.csv", "--as", "icn")
    run(ward, "pages", "--locale", "en")
    assert _json(run, ward, "recall", "G1")["copies"] == []

    path = ward / "content" / "protocols" / "gloves.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("revision: 1", "revision: 2"), encoding="utf-8")
    told = _json(run, ward, "recall", "G1")
    assert (told["copies"], told["superseded"]) == ([], [])
    run(ward, "register", "mount", fourth, "--slot", "corridor-wall", "--as", "icn")
    _sign(run, ward, day=NEXT)
    told = _json(run, ward, "recall", "G1", expect=1, day=NEXT)
    assert [each["number"] for each in told["copies"]] == [second, fourth, first, third]
    assert {(each["cause"], each["replaceable"]) for each in told["copies"]} == {("replaced", True)}
    assert [first in name for name in told["superseded"]] == [True]
    refused = run(
        ward, "register", "mount", fourth, "--slot", "way-out-wall", "--as", "icn", expect=1, day=NEXT
    )
    assert "is outdated" in refused.stdout

    (new,) = [sheet["numbers"] for sheet in _json(run, ward, *draw[:-1], "1", day=NEXT)["sheets"]]
    run(ward, "register", "replace", first, "--by", new[0], "--as", "icn", day=NEXT)
    run(ward, "register", "remove", second, "--destroyed", "--as", "icn", day=NEXT)
    run(ward, "register", "remove", third, "--as", "icn", day=NEXT)
    lost = ("register", "lost", fourth, "--as", "icn")
    assert "RG-10" in run(ward, *lost, expect=1, day=NEXT).stdout
    run(ward, *lost, "--note", "Looked behind every door.", day=NEXT)
    close = ("recall", "G1", "--close", "--as", "icn")
    assert "signage pages" in run(ward, *close, expect=1, day=NEXT).stdout
    run(ward, "pages", "--locale", "en", day=NEXT)
    assert "is closed" in run(ward, *close, day=NEXT).stdout

    table = ward / _json(run, ward, "audit", "round", day=NEXT)["table"]
    rows = list(csv.DictReader(table.read_text(encoding="utf-8").splitlines()))
    assert [row["number"] for row in rows] == new
    rows[0].update(dict.fromkeys(("present", "revision", "readable", "clean", "place"), "yes"))
    rows.append({**dict.fromkeys(rows[0], ""), "number": fourth, "where": "behind a door", "present": "yes"})
    with (ward / "audit.csv").open("w", newline="", encoding="utf-8") as stream:
        writer = csv.DictWriter(stream, rows[0].keys())
        writer.writeheader()
        writer.writerows(rows)
    told = _json(run, ward, "audit", "result", "audit.csv", "--as", "icn", expect=1, day=NEXT)
    assert told["score"] == 1.0
    assert [each["number"] for each in told["strangers"]] == [fourth]
    assert told["day"] == date(2026, 12, 15).isoformat()


def test_a_withdrawn_protocol_leaves_a_notice_in_every_slot(run, ward):
    _sign(run, ward)
    draw = ("draw", "--protocol", "G1", "--locale", "en", "--sheet", "pocket-checklist", "--copies", "1")
    (number,) = _json(run, ward, *draw)["sheets"][0]["numbers"]
    run(ward, "register", "mount", number, "--slot", "way-out-wall", "--as", "icn")
    run(ward, "withdraw", "G1", "--reason", "The rub was changed.", "--as", "ward-lead")
    told = _json(run, ward, "recall", "G1", expect=1)
    assert [(each["number"], each["cause"]) for each in told["copies"]] == [(number, "withdrawn")]
    assert [path.rsplit("/", 1)[1] for path in told["papers"]] == [
        "recall-gloves-en.pdf", "withdrawn-gloves-example-ward-way-out-wall-en.pdf",
    ]  # fmt: skip
    assert len(told["superseded"]) == 1


def test_a_damaged_file_of_sign_offs_recalls_nothing_by_itself(run, ward):
    _sign(run, ward)
    draw = ("draw", "--protocol", "G1", "--locale", "en", "--sheet", "pocket-checklist", "--copies", "1")
    (number,) = _json(run, ward, *draw)["sheets"][0]["numbers"]
    run(ward, "register", "mount", number, "--slot", "way-out-wall", "--as", "icn")
    path = ward / "content" / "approvals.jsonl"
    path.write_bytes(path.read_bytes().replace(b"ward-lead", b"ward-leaf"))
    assert "cannot be told" in run(ward, "recall", "G1", expect=1).stderr
    assert (
        "cannot be told"
        in run(ward, "register", "mount", number, "--slot", "corridor-wall", "--as", "icn", expect=1).stderr
    )
    run(ward, "register", "remove", number, "--as", "icn")
