"""The commands of the register on a small library, signed in its own language."""

import csv

import pytest
from signing import signed_anew

from signage import project

PROTOCOL = "gloves"
DAY = "2026-11-26"


@pytest.fixture
def run(ward, signage, monkeypatch):
    """Runs a command on the library that 'signage start' writes, opened as if it were signed in English."""
    opened = project.open_project
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795651200")
    monkeypatch.setattr(project, "open_project", lambda *given: signed_anew(opened(*given), PROTOCOL, "en"))

    def command(line, *, expect=0):
        told = signage(f"{line} --format json")
        assert told.status == expect, told.out + told.err
        return told.json

    return command


def test_copies_go_round_from_the_printer_to_the_wall_and_back(run, ward):
    drawn = run("draw --locale en --sheet pocket-checklist --copies 3")["sheets"]
    (numbers,) = [sheet["numbers"] for sheet in drawn]
    first, second, third = numbers
    run(f"register mount {first} --slot corridor-wall --as icn")
    (ward / "table.csv").write_text(f"number,learner\n{second},L07\n")
    changes = run("register mount --from table.csv --as icn")["changes"]
    assert [(each["number"], each["learner"]) for each in changes] == [(second, "L07")]
    assert run(f"recall {PROTOCOL}")["copies"] == []
    assert {each["state"] for each in run("register list")["copies"]} == {"mounted", "printed"}
    run(f"register replace {first} --by {third} --as icn")
    told = run(f"register list --number {first}")
    assert [each["happened"] for each in told["events"]] == ["mounted", "replaced", "removed"]
    assert run("register export all.csv")["rows"] == 3 + 5
    assert len(list(csv.reader((ward / "all.csv").read_text().splitlines()))) == 9


def test_a_changed_protocol_recalls_what_hangs_and_ends_when_all_is_done(run, ward):
    numbers = run("draw --locale en --sheet pocket-checklist --copies 2")["sheets"][0]["numbers"]
    run(f"register mount {numbers[0]} --slot corridor-wall --as icn")
    run("audit round")
    path = ward / "content" / "protocols" / "gloves.yaml"
    path.write_text(path.read_text().replace("revision: 1", "revision: 2"))
    told = run(f"recall {PROTOCOL}", expect=1)
    assert [(each["number"], each["cause"]) for each in told["copies"]] == [(numbers[0], "replaced")]
    assert [each["number"] for each in told["unused"]] == [numbers[1]]
    assert told["papers"] == ["output/forms/recall-gloves-en.pdf"]
    (moved,) = told["superseded"]
    assert (ward / "output" / "superseded" / moved).is_file()
    refused = run(f"register mount {numbers[1]} --slot corridor-wall --as icn", expect=1)
    assert [problem["code"] for problem in refused["problems"]] == ["RG-8"]
    assert run(f"recall {PROTOCOL} --close --as icn", expect=1)["closed"] is False
    run(f"register remove {numbers[0]} --destroyed --as icn")
    assert "signage pages" in run(f"recall {PROTOCOL} --close --as icn", expect=1)["open"][0]
    run("pages --locale en")
    assert run(f"recall {PROTOCOL} --close --as icn")["closed"] is True
    assert run(f"recall {PROTOCOL}")["done"] == []


def test_an_audit_round_is_printed_filled_and_scored(run, ward):
    numbers = run("draw --locale en --sheet pocket-checklist --copies 2")["sheets"][0]["numbers"]
    for number in numbers:
        run(f"register mount {number} --slot corridor-wall --as icn")
    made = run("audit round")
    rows = list(csv.DictReader((ward / made["table"]).read_text().splitlines()))
    assert [row["number"] for row in rows] == numbers
    checks = ("present", "revision", "readable", "clean", "place")
    for row, answer in zip(rows, ("yes", "no"), strict=True):
        row.update({**dict.fromkeys(checks, "yes"), "clean": answer})
    rows.append({**dict.fromkeys(rows[0], ""), "where": "kitchen door", "remark": "home-made"})
    with (ward / "filled.csv").open("w", newline="") as stream:
        writer = csv.DictWriter(stream, rows[0].keys())
        writer.writeheader()
        writer.writerows(rows)
    told = run("audit result filled.csv --as icn", expect=1)
    assert (told["score"], told["failures"], len(told["strangers"])) == (0.5, {"clean": 1}, 1)
    assert run("audit result filled.csv --as icn", expect=1)["before"][0]["score"] == 0.5
    assert [each["score"] for each in run("audit rounds")["rounds"]] == [0.5, 0.5]
    assert run("audit due --calendar dates.ics")["overdue"] == []
    assert (ward / "dates.ics").read_bytes().startswith(b"BEGIN:VCALENDAR")


def test_an_incident_slip_is_entered_once_and_brings_no_person(run, ward):
    (number,) = run("draw --locale en --sheet pocket-checklist --copies 1")["sheets"][0]["numbers"]
    made = run("audit slip")
    step = project.open_project(ward / "content", ward / "locales").library.protocols[PROTOCOL].steps[0]
    with (ward / made["table"]).open("a") as stream:
        stream.write(f"2026-11-25,{number},{step.id},yes,,Say it larger.,\n")
    for added in (1, 0):
        told = run(f"audit incident {made['table']} --as icn", expect=1)
        assert (told["added"], told["incidents"][0]["step"]) == (added, step.id)
    (ward / "names.csv").write_text(f"day,number,step,part,patient\n2026-11-25,{number},1,no,x\n")
    (problem,) = run("audit incident names.csv --as icn", expect=2)["problems"]
    assert problem["code"] == "RG-11"
