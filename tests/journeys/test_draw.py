import hashlib
import json


def test_one_poster_as_json(run, demo):
    result = json.loads(
        run(
            demo,
            "draw",
            "--protocol",
            "P1",
            "--sheet",
            "poster",
            "--locale",
            "ar",
            "--paper",
            "a3",
            "--format",
            "json",
        ).stdout
    )
    assert {sheet["kind"] for sheet in result["sheets"]} == {"poster"}
    assert len(result["sheets"]) == 2
    assert result["refused"] == []
    for sheet in result["sheets"]:
        data = (demo / sheet["path"]).read_bytes()
        assert hashlib.sha256(data).hexdigest() == sheet["sha256"]
        assert sheet["mark"] == "draft"
        assert sheet["reasons"]
        assert sheet["locale"] == "ar"
        steps, words = sheet["revision"].split("-")
        assert (len(steps), len(words)) == (4, 4)


def test_drawn_twice_every_byte_is_the_same(run, demo):
    arguments = ("draw", "--protocol", "P3", "--locale", "hi", "--format", "json")
    first = json.loads(run(demo, *arguments).stdout)["sheets"]
    second = json.loads(run(demo, *arguments, "--output", "again").stdout)["sheets"]
    assert [sheet["sha256"] for sheet in first] == [sheet["sha256"] for sheet in second]


def test_a_language_in_work_is_refused_and_the_reason_said(run, demo):
    message = run(demo, "draw", "--locale", "bn", "--sheet", "poster", expect=1).stderr
    assert "bn" in message
    assert "in-use" in message


def test_typing_errors_are_answered_with_what_exists(run, demo):
    assert "Did you mean poster" in run(demo, "draw", "--sheet", "postr", expect=2).stderr
    assert "layered-protection" in run(demo, "draw", "--protocol", "P9", expect=2).stderr
    assert "A3" in run(demo, "draw", "--paper", "A33", expect=2).stderr
    assert "fr" in run(demo, "draw", "--locale", "xx", expect=2).stderr


def test_pictures_on_request(run, demo):
    run(
        demo,
        "draw",
        "--protocol",
        "P3",
        "--sheet",
        "pocket-checklist",
        "--locale",
        "en",
        "--png",
        "--resolution",
        "50",
    )
    assert list((demo / "output").rglob("*.png"))


def test_stand_in_languages_need_no_files(run, demo):
    run(
        demo,
        "draw",
        "--locale",
        "en-XA",
        "--locale",
        "ar-XB",
        "--sheet",
        "pocket-checklist",
        "--protocol",
        "P3",
    )


def test_a_file_in_place_of_the_output_folder(run, demo):
    (demo / "output").write_text("not a folder", encoding="utf-8")
    message = run(
        demo, "draw", "--locale", "en", "--sheet", "pocket-checklist", "--protocol", "P3", expect=2
    ).stderr
    assert "output" in message
