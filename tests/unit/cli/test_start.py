"""A new library holds what the README says: content, and the words of its languages."""

import pytest


def entries(path):
    return path.read_text(encoding="utf-8").split("\n\n")


def test_languages_come_with_the_words_of_the_programme(tmp_path, monkeypatch, signage):
    monkeypatch.chdir(tmp_path)
    told = signage("start ward --locale fr --locale pt --format json")
    assert told.status == 0
    for name in told.json["written"]:
        assert (tmp_path / "ward" / name).is_file(), name
    monkeypatch.chdir(tmp_path / "ward")
    counts = signage("words progress --format json").json["locales"]
    assert list(counts) == ["fr", "pt"]
    assert counts["fr"]["missing"] < 30 < counts["fr"]["translated"]
    assert counts["pt"]["translated"] == 0
    interface = entries(tmp_path / "ward/locales/fr/LC_MESSAGES/interface.po")
    assert not any('msgstr ""' in entry for entry in interface[1:])
    assert all("# origin: machine" in entry for entry in interface[1:])
    content = entries(tmp_path / "ward/locales/fr/LC_MESSAGES/content.po")
    for entry in content[1:]:
        assert ('msgctxt "picture/' in entry) != ('msgstr ""' in entry), entry
    assert "Nothing to change" in signage("words update").out
    assert "WD-5 " not in signage("check --quiet").out


def test_a_library_in_languages_without_french_reads_and_checks_clean(tmp_path, monkeypatch, signage):
    for words in ("--locale ar", "--locale sw --locale hi", "--locale fr"):
        folder = tmp_path / words.replace(" ", "")
        folder.mkdir()
        monkeypatch.chdir(folder)
        assert signage(f"start ward {words}").status == 0, words
        monkeypatch.chdir(folder / "ward")
        checked = signage("check --format json")
        assert checked.status == 0
        assert not [each for each in checked.json["problems"] if each["severity"] == "S1"], words


@pytest.mark.parametrize(
    "words", ["--locale EN", "--locale en", "--locale fr_FR", "--locale en-XA", "--locale x"]
)
def test_a_tag_that_cannot_be_leaves_nothing_behind(tmp_path, monkeypatch, signage, words):
    monkeypatch.chdir(tmp_path)
    assert signage(f"start ward {words}").status == 2
    assert not list(tmp_path.iterdir())


def test_words_add_brings_the_words_of_the_programme(ward, signage):
    told = signage("words add ar")
    assert "ar: {owner: language lead, state: in-work}" in told.out
    counts = signage("words progress --format json").json["locales"]
    assert counts["ar"]["missing"] < 30 < counts["ar"]["translated"]
    assert "already" in signage("words add ar").err


def test_a_long_procedure_to_begin_from_checks_and_prints_whole(tmp_path, monkeypatch, signage):
    """Every kind of sheet in English, with conditions, postures and rules: SH-22 asks for each of them."""
    monkeypatch.chdir(tmp_path)
    refused = signage("start ward --like third-hospital")
    assert (refused.status, list(tmp_path.iterdir())) == (2, [])
    assert "gloves, second-hospital" in refused.err
    assert signage("start ward --like second-hospital --quiet").status == 0
    monkeypatch.chdir(tmp_path / "ward")
    problems = signage("check --format json").json["problems"]
    grave = [each for each in problems if each["severity"] != "S3" and each["locale"] in {None, "en"}]
    assert grave == []
    drawn = signage("draw --protocol L1 --locale en --format json").json
    assert (drawn["refused"], drawn["unmade"]) == ([], [])
    assert {sheet["kind"] for sheet in drawn["sheets"]} == {"poster", "step-cards", "pocket-checklist"}
