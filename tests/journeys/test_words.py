import json


def test_update_twice_changes_nothing(run, demo):
    run(demo, "words", "update")
    before = {path: path.read_bytes() for path in (demo / "locales").rglob("*.po*")}
    assert "Nothing to change" in run(demo, "words", "update").stdout
    assert before == {path: path.read_bytes() for path in (demo / "locales").rglob("*.po*")}


def test_the_stored_catalogues_are_up_to_date(run, demo):
    assert "Nothing to change" in run(demo, "words", "update").stdout


def test_progress_tells_the_half_done_language(run, demo):
    locales = json.loads(run(demo, "words", "progress", "--format", "json").stdout)["locales"]
    assert locales["bn"]["missing"] > 0
    assert locales["bn"]["translated"] > 0
    for tag in ("ar", "fr", "am", "hi"):
        assert locales[tag]["missing"] == locales[tag]["doubtful"] == 0


def test_a_new_language_begins_empty(run, demo):
    done = run(demo, "words", "add", "sw")
    assert "in-work" in done.stdout
    assert (demo / "locales/sw/LC_MESSAGES/content.po").is_file()
    assert (
        json.loads(run(demo, "words", "progress", "--format", "json").stdout)["locales"]["sw"]["translated"]
        == 0
    )


def test_an_ill_formed_tag_is_refused(run, demo):
    assert "BCP 47" in run(demo, "words", "add", "en_GB", expect=2).stderr
    assert not (demo / "locales/en_GB").exists()


def test_a_broken_catalogue_is_named_by_line(run, demo):
    path = demo / "locales/fr/LC_MESSAGES/content.po"
    lines = path.read_text(encoding="utf-8").split("\n")
    index = next(i for i, line in enumerate(lines) if line.startswith("msgstr ") and i > 40)
    lines[index] = lines[index].rstrip('"')
    path.write_text("\n".join(lines), encoding="utf-8")
    message = run(demo, "words", "update", expect=2).stderr
    assert f"content.po:{index + 1}" in message


def test_a_changed_source_is_doubtful_not_lost(run, demo):
    path = demo / "content/protocols/layered-protection.yaml"
    path.write_text(
        path.read_text(encoding="utf-8").replace("Take off the hood", "Take the hood off", 1),
        encoding="utf-8",
    )
    run(demo, "words", "update")
    counts = json.loads(run(demo, "words", "progress", "--format", "json").stdout)["locales"]
    assert counts["fr"]["stale"] >= 1
    assert "Take off the hood" in (demo / "locales/fr/LC_MESSAGES/content.po").read_text(encoding="utf-8")
