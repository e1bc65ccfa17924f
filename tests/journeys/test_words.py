import json


def test_the_catalogues_of_the_demo_are_up_to_date_and_tell_the_half_done_language(run, demo):
    assert "Nothing to change" in run(demo, "words", "update").stdout
    locales = json.loads(run(demo, "words", "progress", "--format", "json").stdout)["locales"]
    assert locales["bn"]["missing"] > 0
    assert locales["bn"]["translated"] > 0
    for tag in ("ar", "fr", "am", "hi"):
        assert locales[tag]["missing"] == locales[tag]["doubtful"] == 0


def test_a_new_language_begins_empty(run, ward):
    done = run(ward, "words", "add", "sw")
    assert "in-work" in done.stdout
    assert (ward / "locales/sw/LC_MESSAGES/content.po").is_file()
    assert (
        json.loads(run(ward, "words", "progress", "--format", "json").stdout)["locales"]["sw"]["translated"]
        == 0
    )


def test_an_ill_formed_tag_is_refused(run, ward):
    assert "BCP 47" in run(ward, "words", "add", "en_GB", expect=2).stderr
    assert not (ward / "locales/en_GB").exists()


def test_a_broken_catalogue_is_named_by_line(run, ward):
    path = ward / "locales/fr/LC_MESSAGES/content.po"
    lines = path.read_text(encoding="utf-8").split("\n")
    index = next(i for i, line in enumerate(lines) if line.startswith("msgstr ") and i > 40)
    lines[index] = lines[index].rstrip('"')
    path.write_text("\n".join(lines), encoding="utf-8")
    message = run(ward, "words", "update", expect=2).stderr
    assert f"content.po:{index + 1}" in message


def test_a_changed_source_is_doubtful_not_lost_and_a_second_update_changes_nothing(run, ward):
    catalogue = ward / "locales/fr/LC_MESSAGES/content.po"
    text = catalogue.read_text(encoding="utf-8")
    source = 'msgid "Take off the gloves"\nmsgstr "'
    assert source in text
    catalogue.write_text(text.replace(source, f"{source}Retirez les gants"), encoding="utf-8")
    path = ward / "content/protocols/gloves.yaml"
    path.write_text(
        path.read_text(encoding="utf-8").replace("Take off the gloves", "Take the gloves off", 1),
        encoding="utf-8",
    )
    run(ward, "words", "update")
    counts = json.loads(run(ward, "words", "progress", "--format", "json").stdout)["locales"]
    assert counts["fr"]["stale"] >= 1
    assert "Take off the gloves" in catalogue.read_text(encoding="utf-8")
    before = {each: each.read_bytes() for each in (ward / "locales").rglob("*.po*")}
    assert "Nothing to change" in run(ward, "words", "update").stdout
    assert before == {each: each.read_bytes() for each in (ward / "locales").rglob("*.po*")}
