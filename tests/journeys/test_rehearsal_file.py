"""``signage rehearse --html``: a file that is written whole, or a plain word why not."""

import json


def test_the_page_is_written_where_asked_and_said_so(run, ward):
    done = run(ward, "rehearse", "G1", "--html", "made today/rehearsal ü.html")
    assert "rehearsal ü.html" in done.stderr
    page = (ward / "made today" / "rehearsal ü.html").read_text(encoding="utf-8")
    assert page.startswith("<!DOCTYPE html>")
    assert "G1" in page
    assert str(ward) not in page


def test_a_folder_is_refused_in_plain_words(run, ward):
    done = run(ward, "rehearse", "G1", "--html", "content", expect=2)
    assert "'content' is a folder. Name a file" in done.stderr


def test_json_stays_json(run, ward):
    done = run(ward, "rehearse", "G1", "--html", "page.html", "--format", "json")
    assert json.loads(done.stdout)["protocol"] == "gloves"
    assert (ward / "page.html").is_file()
