"""From signed sheets to the wall and back: numbered copies, a revision, a recall, an audit, the end."""

import csv
import json
from datetime import date

NEXT = "1797292800"
"""2026-12-15: the day of the second revision."""


def _json(run, demo, *words, **options):
    return json.loads(run(demo, *words, "--format", "json", **options).stdout)


def _sign(run, demo, **options):
    asked = ("approve", "P3", "--as", "ward-lead")
    code = _json(run, demo, *asked, **options)["confirmation"]
    run(demo, *asked, "--yes", code, **options)


def test_a_revised_protocol_comes_back_from_every_wall(run, demo):
    draw = ("draw", "--protocol", "P3", "--locale", "en", "--sheet", "pocket-checklist", "--copies", "4")
    assert [sheet["numbers"] for sheet in _json(run, demo, *draw)["sheets"]] == [[]]
    assert _json(run, demo, "register", "list")["copies"] == []
    _sign(run, demo)
    (sheet,) = _json(run, demo, *draw)["sheets"]
    assert (sheet["mark"], sheet["copies"]) == ("demonstration", 4)
    first, second, third, fourth = sheet["numbers"]
    (demo / "mounted.csv").write_text(f"number;slot;learner\n{first};s4;\n{second};s2;\n{third};;L07\n")
    run(demo, "register", "mount", "--from", "mounted.csv", "--as", "night-porter")
    run(demo, "pages", "--locale", "en")
    assert _json(run, demo, "recall", "P3")["copies"] == []

    path = demo / "content" / "protocols" / "clean-hands.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("revision: 1", "revision: 2"), encoding="utf-8")
    told = _json(run, demo, "recall", "P3")
    assert (told["copies"], told["superseded"]) == ([], [])
    run(demo, "register", "mount", fourth, "--slot", "s1", "--as", "night-porter")
    _sign(run, demo, day=NEXT)
    told = _json(run, demo, "recall", "P3", expect=1, day=NEXT)
    assert [each["number"] for each in told["copies"]] == [fourth, second, first, third]
    assert {(each["cause"], each["replaceable"]) for each in told["copies"]} == {("replaced", True)}
    assert [name.split("-LB-")[1][:4] for name in told["superseded"]] == [first.split("-")[1]]
    refused = run(
        demo, "register", "mount", fourth, "--slot", "s3", "--as", "night-porter", expect=1, day=NEXT
    )
    assert "is outdated" in refused.stdout

    (new,) = [sheet["numbers"] for sheet in _json(run, demo, *draw[:-1], "1", day=NEXT)["sheets"]]
    run(demo, "register", "replace", first, "--by", new[0], "--as", "night-porter", day=NEXT)
    run(demo, "register", "remove", second, "--destroyed", "--as", "icn", day=NEXT)
    run(demo, "register", "remove", third, "--as", "trainer", day=NEXT)
    lost = ("register", "lost", fourth, "--as", "icn")
    assert "RG-10" in run(demo, *lost, expect=1, day=NEXT).stdout
    run(demo, *lost, "--note", "Looked behind every door.", day=NEXT)
    close = ("recall", "P3", "--close", "--as", "icn")
    assert "signage pages" in run(demo, *close, expect=1, day=NEXT).stdout
    run(demo, "pages", "--locale", "en", day=NEXT)
    assert "is closed" in run(demo, *close, day=NEXT).stdout

    table = demo / _json(run, demo, "audit", "round", day=NEXT)["table"]
    rows = list(csv.DictReader(table.read_text(encoding="utf-8").splitlines()))
    assert [row["number"] for row in rows] == new
    rows[0].update(dict.fromkeys(("present", "revision", "readable", "clean", "place"), "yes"))
    rows.append({**dict.fromkeys(rows[0], ""), "number": fourth, "where": "behind a door", "present": "yes"})
    with (demo / "audit.csv").open("w", newline="", encoding="utf-8") as stream:
        writer = csv.DictWriter(stream, rows[0].keys())
        writer.writeheader()
        writer.writerows(rows)
    told = _json(run, demo, "audit", "result", "audit.csv", "--as", "icn", expect=1, day=NEXT)
    assert told["score"] == 1.0
    assert [each["number"] for each in told["strangers"]] == [fourth]
    assert told["day"] == date(2026, 12, 15).isoformat()


def test_a_withdrawn_protocol_leaves_a_notice_in_every_slot(run, demo):
    _sign(run, demo)
    draw = ("draw", "--protocol", "P3", "--locale", "en", "--sheet", "pocket-checklist", "--copies", "1")
    (number,) = _json(run, demo, *draw)["sheets"][0]["numbers"]
    run(demo, "register", "mount", number, "--slot", "s2", "--as", "night-porter")
    run(demo, "withdraw", "P3", "--reason", "The rub was changed.", "--as", "ward-lead")
    told = _json(run, demo, "recall", "P3", expect=1)
    assert [(each["number"], each["cause"]) for each in told["copies"]] == [(number, "withdrawn")]
    assert [path.rsplit("/", 1)[1] for path in told["papers"]] == [
        "recall-clean-hands-en.pdf", "withdrawn-clean-hands-lantern-bay-s2-en.pdf",
    ]  # fmt: skip
    assert len(told["superseded"]) == 1


def test_a_damaged_file_of_sign_offs_recalls_nothing_by_itself(run, demo):
    _sign(run, demo)
    draw = ("draw", "--protocol", "P3", "--locale", "en", "--sheet", "pocket-checklist", "--copies", "1")
    (number,) = _json(run, demo, *draw)["sheets"][0]["numbers"]
    run(demo, "register", "mount", number, "--slot", "s2", "--as", "night-porter")
    path = demo / "content" / "approvals.jsonl"
    path.write_bytes(path.read_bytes().replace(b"ward-lead", b"ward-leaf"))
    assert "cannot be told" in run(demo, "recall", "P3", expect=1).stderr
    assert (
        "cannot be told"
        in run(demo, "register", "mount", number, "--slot", "s1", "--as", "night-porter", expect=1).stderr
    )
    run(demo, "register", "remove", number, "--as", "night-porter")
