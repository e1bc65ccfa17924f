"""``signage rehearse --html``: a file that is written whole, or a plain word why not."""

import json


def test_the_page_is_written_where_asked_and_said_so(run, demo):
    done = run(demo, "rehearse", "P3", "--html", "made today/rehearsal ü.html")
    assert "rehearsal ü.html" in done.stderr
    page = (demo / "made today" / "rehearsal ü.html").read_text(encoding="utf-8")
    assert page.startswith("<!DOCTYPE html>")
    assert "P3" in page
    assert str(demo) not in page


def test_a_folder_is_refused_in_plain_words(run, demo):
    done = run(demo, "rehearse", "P3", "--html", "content", expect=2)
    assert "'content' is a folder. Name a file" in done.stderr


def test_json_stays_json(run, demo):
    done = run(demo, "rehearse", "P3", "--html", "page.html", "--format", "json")
    assert json.loads(done.stdout)["protocol"] == "clean-hands"
    assert (demo / "page.html").is_file()
