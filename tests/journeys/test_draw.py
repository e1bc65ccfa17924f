import hashlib
import json


def test_one_poster_as_json(run, ward):
    result = json.loads(
        run(
            ward,
            "draw",
            "--protocol",
            "G1",
            "--sheet",
            "poster",
            "--locale",
            "en",
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
        data = (ward / sheet["path"]).read_bytes()
        assert hashlib.sha256(data).hexdigest() == sheet["sha256"]
        assert sheet["mark"] == "draft"
        assert sheet["reasons"]
        assert sheet["locale"] == "en"
        steps, words = sheet["revision"].split("-")
        assert (len(steps), len(words)) == (4, 4)


def test_drawn_twice_every_byte_is_the_same(run, ward):
    arguments = ("draw", "--protocol", "G1", "--locale", "en", "--format", "json")
    first = json.loads(run(ward, *arguments).stdout)["sheets"]
    second = json.loads(run(ward, *arguments, "--fresh", "--output", "again").stdout)["sheets"]
    assert [sheet["sha256"] for sheet in first] == [sheet["sha256"] for sheet in second]


def test_a_language_in_work_is_refused_and_the_reason_said(run, ward):
    message = run(ward, "draw", "--locale", "fr", "--sheet", "poster", expect=1).stderr
    assert "fr" in message
    assert "in-use" in message


def test_typing_errors_are_answered_with_what_exists(run, ward):
    assert "Did you mean poster" in run(ward, "draw", "--sheet", "postr", expect=2).stderr
    assert "gloves" in run(ward, "draw", "--protocol", "P9", expect=2).stderr
    assert "A3" in run(ward, "draw", "--paper", "A33", expect=2).stderr
    assert "fr" in run(ward, "draw", "--locale", "xx", expect=2).stderr


def test_pictures_on_request(run, ward):
    run(
        ward,
        "draw",
        "--protocol",
        "G1",
        "--sheet",
        "pocket-checklist",
        "--locale",
        "en",
        "--png",
        "--resolution",
        "50",
    )
    assert list((ward / "output").rglob("*.png"))


def test_stand_in_languages_need_no_files(run, ward):
    run(
        ward,
        "draw",
        "--locale",
        "en-XA",
        "--locale",
        "ar-XB",
        "--sheet",
        "pocket-checklist",
        "--protocol",
        "G1",
    )


def test_a_file_in_place_of_the_output_folder(run, ward):
    (ward / "output").write_text("not a folder", encoding="utf-8")
    message = run(
        ward, "draw", "--locale", "en", "--sheet", "pocket-checklist", "--protocol", "G1", expect=2
    ).stderr
    assert "output" in message
