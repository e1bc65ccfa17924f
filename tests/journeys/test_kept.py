"""What a second run takes over from the first, and what it must not."""

import json

P5 = ("--protocol", "P5", "--locale", "en", "--locale", "fr", "--paper", "A4")
PROTOCOL = "content/protocols/chair-turnaround.yaml"


def drawn(run, folder, *arguments, **options):
    return json.loads(run(folder, "draw", "--format", "json", *P5, *arguments, **options).stdout)


def times_of(folder):
    return {path: path.stat().st_mtime_ns for path in (folder / "output").rglob("*") if path.is_file()}


def findings(told):
    return [line for line in told.splitlines() if "looked at anew" not in line]


def change(path, old, new):
    assert old != new
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_a_second_run_makes_nothing_anew_and_rewrites_no_file(run, demo):
    first = drawn(run, demo, "--fresh")
    assert first["kept"] == 0
    before = times_of(demo)
    again = drawn(run, demo)
    assert again["kept"] == len(again["sheets"]) == len(first["sheets"])
    assert times_of(demo) == before
    assert f"0 drawn anew; {len(first['sheets'])} are as they were" in run(demo, "draw", *P5).stdout

    def without(result):
        return [{**sheet, "path": ""} for sheet in result["sheets"]]

    assert without(drawn(run, demo, "--fresh", "--output", "anew")) == without(again)


def test_files_carry_the_day_of_their_run(run, demo):
    arguments = ("draw", "--protocol", "P5", "--locale", "en", "--sheet", "poster", "--paper", "A4")
    days = {}
    for day in ("1795651200", "1798761600"):
        run(demo, *arguments, day=day)
        days[day] = [file.read_bytes() for file in sorted((demo / "output").rglob("*.pdf"))]
    first, second = days.values()
    assert all(b"D:20261126" in data for data in first)
    assert all(b"D:20270101" in data for data in second)


def test_one_changed_word_makes_only_the_sheets_of_its_language_anew(run, demo):
    drawn(run, demo)
    french = demo / "locales" / "fr" / "LC_MESSAGES" / "content.po"
    change(french, 'msgstr "Essuyer la chaise sale"', 'msgstr "Bien essuyer la chaise sale"')
    again = drawn(run, demo)
    languages = [sheet["locale"] for sheet in again["sheets"]]
    assert again["kept"] == languages.count("en")
    assert 0 < languages.count("fr") == len(languages) - again["kept"]


def test_what_may_be_printed_is_decided_in_every_run(run, demo):
    drawn(run, demo)
    change(demo / PROTOCOL, "# ", "# A remark that moves every line.\n# ")
    again = drawn(run, demo)
    assert again["kept"] == len(again["sheets"])
    change(
        demo / PROTOCOL,
        "      - step: rub-after-gloves\n",
        "      - step: rub-after-gloves\n        when: if-soiled\n",
    )
    refused = drawn(run, demo, expect=1)
    assert refused["sheets"] == []
    assert all(PROTOCOL in refusal["why"] for refusal in refused["refused"])


def test_a_second_check_tells_the_same_and_looks_at_nothing_anew(run, ward):
    protocol = ward / "content" / "protocols" / "gloves.yaml"
    change(
        protocol, "text: Put on the gloves", "text: Put on the gloves with care and without haste at the door"
    )
    first = run(ward, "check", "--fresh", "--all").stdout
    again = run(ward, "check", "--all").stdout
    assert "0 of " in again
    assert findings(again) == findings(first) != []
    change(protocol, "text: Rub", "# A remark that moves every line.\n        text: Rub")
    moved = run(ward, "check", "--all").stdout
    assert "0 of " in moved
    assert findings(moved) == findings(run(ward, "check", "--all", "--fresh").stdout)
    assert findings(moved) != findings(again)
