from dataclasses import replace
from datetime import date

import demo
import pytest
from word_samples import build_library

from signage.ground.errors import UnreadableInputError, WrongUsageError
from signage.ground.problem import with_problems
from signage.model.library import Locale, LocaleState
from signage.model.messages import library_messages
from signage.text.font_set import BUNDLED_FONTS
from signage.words.catalogue import CatalogueKind, EntryState, catalogue_path
from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.marks import checked_mark
from signage.words.po.reader import read_catalogue_file
from signage.words.update import (
    add_locale,
    blank_entries,
    collect,
    progress,
    progress_json,
    update,
    write_changes,
)


def run_update(library, locales):
    return write_changes(update(library, library_messages(library), locales))


def content(locales, tag="fr"):
    result = read_catalogue_file(catalogue_path(locales, tag, CatalogueKind.CONTENT), tag)
    assert result.problems == ()
    return result.catalogue


def with_text(library, step_id, text):
    """The library with another headline in one step."""
    phase = library.protocols["off"].phases[0]
    steps = tuple(replace(step, text=text) if step.id == step_id else step for step in phase.steps)
    return build_library(steps=steps)


def test_templates_hold_every_text_of_the_library_untranslated(library, messages, tmp_path):
    assert write_changes(collect(library, messages, tmp_path)) == 2
    template = read_catalogue_file(tmp_path / "content.pot", "en").catalogue
    assert [entry.context for entry in template.entries] == [message.context for message in messages]
    assert not any(entry.translation for entry in template.entries)
    assert write_changes(collect(library, messages, tmp_path)) == 0


def test_running_twice_changes_no_byte(library, locales):
    assert run_update(library, locales) == 2
    before = {path: path.read_bytes() for path in locales.rglob("*.po")}
    assert run_update(library, locales) == 0
    assert {path: path.read_bytes() for path in locales.rglob("*.po")} == before


def test_translators_are_told_role_picture_room_dangers_and_terms(library, locales):
    run_update(library, locales)
    notes = content(locales).by_context["off/apron-off/text"].notes
    assert notes == (
        "role: headline",
        "picture: apron-off",
        "length: 26 characters fit at full size",
        "critical: a mistake here can hurt",
        "term: apron | use: tablier | never: blouse | Plastic.",
    )
    assert any(
        note.startswith("negation:") for note in content(locales).by_context["off/gloves-off/why"].notes
    )
    assert "placeholders: {item} {bin}" in content(locales).by_context["off/apron-off/detail"].notes


def test_translators_are_told_what_the_picture_shows_and_which_texts_say_not():
    project = demo.project()
    wanted = blank_entries(project.library, project.messages, CatalogueKind.CONTENT, "fr")
    caption = wanted["picture/apron-off"].source
    apron = "layered-protection/apron-off"
    assert f"picture: apron-off | {caption}" in wanted[f"{apron}/text"].notes
    assert "picture: apron-off" in wanted["picture/apron-off"].notes
    denying = {"spill/gloves-on/why", "spill/ready-disinfectant/caution"}
    told = {context for context, entry in wanted.items() if any("negation:" in note for note in entry.notes)}
    assert denying <= told
    assert not told & {f"{apron}/text", "spill/gloves-on/text"}


def test_a_changed_source_makes_the_entry_doubtful_and_keeps_text_and_older_source(library, locales):
    run_update(library, locales)
    changed = with_text(library, "apron-off", "Take the apron off slowly.")
    run_update(changed, locales)
    entry = content(locales).by_context["off/apron-off/text"]
    assert entry.state is EntryState.DOUBTFUL
    assert entry.is_stale
    assert entry.source == "Take the apron off slowly."
    assert entry.previous == "Take off the apron."
    assert entry.translation == "Retirer le tablier."


def test_a_source_changed_twice_remembers_the_text_that_was_translated(library, locales):
    for text in ("Take the apron off.", "Take the apron off slowly."):
        run_update(with_text(library, "apron-off", text), locales)
    assert content(locales).by_context["off/apron-off/text"].previous == "Take off the apron."


def test_a_source_changed_back_stays_doubtful_until_somebody_has_looked(library, locales):
    run_update(with_text(library, "apron-off", "Take the apron off."), locales)
    run_update(library, locales)
    entry = content(locales).by_context["off/apron-off/text"]
    assert entry.state is EntryState.DOUBTFUL
    assert not entry.is_stale
    assert entry.previous is None


def test_a_changed_source_withdraws_the_check_and_keeps_the_comment(library, locales, french, rewrite):
    apron = french["off/apron-off/text"]
    mark = checked_mark("b", date(2026, 11, 26), apron.source, apron.translation)
    checked = replace(apron, comments=(" translated: a 2026-11-25", mark, " a remark"))
    rewrite({"off/apron-off/text": checked})
    run_update(library, locales)
    assert content(locales).by_context["off/apron-off/text"].state is EntryState.CHECKED
    run_update(with_text(library, "apron-off", "Take the apron off."), locales)
    comments = content(locales).by_context["off/apron-off/text"].comments
    assert comments[0] == " translated: a 2026-11-25"
    assert comments[1].startswith(" was checked: b 2026-11-26")
    assert comments[2] == " a remark"


def test_a_text_that_is_gone_is_kept_as_obsolete_and_comes_back(library, locales):
    steps = library.protocols["off"].phases[0].steps
    shorter = build_library(steps=tuple(step for step in steps if step.id != "apron-off"))
    run_update(shorter, locales)
    kept = {entry.context: entry.translation for entry in content(locales).obsolete}
    assert kept["off/apron-off/text"] == "Retirer le tablier."
    run_update(library, locales)
    assert content(locales).obsolete == ()
    assert content(locales).by_context["off/apron-off/text"].translation == "Retirer le tablier."


def test_of_two_obsolete_texts_the_one_for_this_source_comes_back(library, locales):
    steps = library.protocols["off"].phases[0].steps
    without = build_library(steps=tuple(step for step in steps if step.id != "apron-off"))
    path = catalogue_path(locales, "fr", CatalogueKind.CONTENT)
    for source, text in (("Take it off.", "Le retirer."), ("Away with it.", "Au loin.")):
        run_update(without, locales)
        obsolete = f'\n# found\n#~ msgctxt "off/apron-off/text"\n#~ msgid "{source}"\n#~ msgstr "{text}"\n'
        path.write_text(path.read_text() + obsolete)
    run_update(library, locales)
    entry = content(locales).by_context["off/apron-off/text"]
    assert (entry.translation, entry.state) == ("Retirer le tablier.", EntryState.TRANSLATED)
    assert [(kept.translation, kept.comments) for kept in content(locales).obsolete] == [
        ("Au loin.", (" found",)),
        ("Le retirer.", (" found",)),
    ]


def test_obsolete_texts_change_no_byte_on_a_second_run(library, locales):
    steps = library.protocols["off"].phases[0].steps
    shorter = build_library(steps=steps[:1])
    run_update(shorter, locales)
    assert run_update(shorter, locales) == 0


def test_an_untranslated_text_with_only_a_mark_leaves_nothing_behind(library, locales, french, rewrite):
    empty = replace(
        french["off/rub/text"], context="off/gone/text", translation="", comments=(" origin: machine",)
    )
    remarked = replace(empty, context="off/gone/why", comments=(" which glove?",))
    rewrite({"off/gone/text": empty, "off/gone/why": remarked})
    run_update(library, locales)
    assert [entry.context for entry in content(locales).obsolete] == ["off/gone/why"]


def test_comments_and_texts_of_translators_survive(library, locales, french, rewrite):
    rewrite({"off/rub/text": replace(french["off/rub/text"], comments=(" mind the tone",))})
    run_update(library, locales)
    entry = content(locales).by_context["off/rub/text"]
    assert entry.comments == (" mind the tone",)
    assert entry.translation == french["off/rub/text"].translation


def test_decomposed_letters_are_composed(library, locales, french, rewrite):
    rewrite({"off/rub/text": replace(french["off/rub/text"], translation="Fre\u0301quemment {time}.")})
    run_update(library, locales)
    assert content(locales).by_context["off/rub/text"].translation == "Fr\u00e9quemment {time}."


def test_a_broken_file_stops_the_update_before_anything_is_planned(library, messages, locales):
    path = catalogue_path(locales, "fr", CatalogueKind.INTERFACE)
    path.write_bytes(path.read_bytes() + b'\nmsgctxt "x\n')
    with pytest.raises(UnreadableInputError) as caught:
        update(library, messages, locales)
    assert {problem.locale for problem in caught.value.problems} == {"fr"}


def test_lesser_faults_of_a_file_are_mended(library, locales):
    path = catalogue_path(locales, "fr", CatalogueKind.CONTENT)
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"Language: fr", b"Language: de"))
    run_update(library, locales)
    assert content(locales).header["Language"] == "fr"


def test_a_locale_without_files_gets_them(library, messages, tmp_path):
    assert write_changes(update(library, messages, tmp_path)) == 2
    assert {entry.state for entry in content(tmp_path).entries} == {EntryState.MISSING}


def test_a_new_locale_gets_empty_catalogues_in_its_own_name(library, messages, tmp_path):
    changes, warnings = with_problems(add_locale(library, messages, tmp_path, "am", BUNDLED_FONTS))
    write_changes(changes)
    assert warnings == ()
    assert "አማርኛ" in content(tmp_path, "am").header_comments[0]
    assert run_update(build_library(locales={"am": library.locales["fr"]}), tmp_path) == 0


def test_a_language_that_cldr_does_not_know_is_added_with_a_warning(library, messages, tmp_path):
    changes, (warning,) = with_problems(add_locale(library, messages, tmp_path, "qaa", BUNDLED_FONTS))
    assert len(changes) == 2
    assert (warning.code, warning.locale) == ("WD-18", "qaa")


def test_a_language_that_no_font_shows_is_added_with_a_warning(library, messages, tmp_path):
    _changes, (warning,) = with_problems(add_locale(library, messages, tmp_path, "bo", BUNDLED_FONTS))
    assert (warning.code, warning.locale) == ("WD-39", "bo")
    assert "content/fonts" in warning.hint


@pytest.mark.parametrize("tag", ["français", "fr_FR", "", "../x", "en", "en-XA", "fr"])
def test_a_locale_that_cannot_be_added_is_refused(library, messages, locales, tag):
    with pytest.raises(WrongUsageError):
        with_problems(add_locale(library, messages, locales, tag, BUNDLED_FONTS))


def test_english_needs_no_interface_and_the_source_language_no_content(library, messages, tmp_path):
    changes, _ = with_problems(add_locale(library, messages, tmp_path, "en-GB", BUNDLED_FONTS))
    assert [change.path.name for change in changes] == ["content.po"]
    source_french = replace(library, source_locale="fr")
    changes, _ = with_problems(add_locale(source_french, messages, tmp_path, "fr", BUNDLED_FONTS))
    assert [change.path.name for change in changes] == ["interface.po"]


def test_progress_counts_each_state(library, messages, locales, french, rewrite):
    title = french["off/title"]
    mark = checked_mark("b", date(2026, 11, 26), title.source, title.translation)
    both = (" translated: a 2026-11-25", mark)
    rewrite(
        {
            "off/rub/text": replace(french["off/rub/text"], translation=""),
            "off/leave/text": replace(french["off/leave/text"], flags=("fuzzy",)),
            "off/title": replace(french["off/title"], comments=both),
            "off/owner": replace(french["off/owner"], source="Owner"),
            "off/gloves-off/text": None,
        }
    )
    counts = progress_json(progress(library, messages, locales))["locales"]
    total = len(messages) + len(FIXED_TEXTS)
    assert counts == {
        "fr": {
            "messages": total,
            "missing": 2,
            "doubtful": 2,
            "translated": total - 5,
            "checked": 1,
            "stale": 1,
        }
    }


def test_progress_of_a_locale_without_files_is_all_missing(messages, tmp_path):
    bengali = {"bn": Locale(tag="bn", owner="language lead", state=LocaleState.IN_WORK)}
    counts = progress(build_library(locales=bengali), messages, tmp_path)["bn"]
    assert counts.missing == counts.messages > 0
