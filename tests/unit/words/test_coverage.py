import re
from dataclasses import replace

import pytest
from word_samples import build_library

from signage.cli.report import status_of
from signage.ground.problem import Severity, with_problems
from signage.model.library import Locale, LocaleState, Term
from signage.model.messages import library_messages
from signage.text.font_set import BUNDLED_FONTS
from signage.words.catalogue import CatalogueKind, Entry, catalogue_path
from signage.words.coverage import coverage_problems, locale_problems
from signage.words.fixed.interface import OTHER_CONTEXTS
from signage.words.hygiene.rules import HYGIENE
from signage.words.meaning.rules import MEANING
from signage.words.rules import RULES
from signage.words.update import add_locale, write_changes

APRON, RUB, GLOVES = "off/apron-off/text", "off/rub/text", "off/gloves-off/text"

SPOILED = [
    ("WD-1", APRON, {"translation": ""}),
    ("WD-1", APRON, None),
    ("WD-2", APRON, {"flags": ("fuzzy",)}),
    ("WD-3", APRON, {"flags": ("fuzzy",), "previous": "Take it off."}),
    ("WD-3", APRON, {"source": "Take it off."}),
    ("WD-4", "off/title", {"translation": " \u00a0\u200b"}),
    ("WD-5", "off/title", {"translation": "Take off the kit"}),
    ("WD-5", "off/title", {"translation": "take OFF, the kit."}),
    ("WD-6", RUB, {"translation": "Frotter les mains."}),
    ("WD-6", RUB, {"translation": "Frotter {time} les mains {time}."}),
    ("WD-6", RUB, {"translation": "Frotter les mains {temps}."}),
    ("WD-6", RUB, {"translation": "Frotter les mains {time} {."}),
    ("WD-7", RUB, {"translation": "Frotter les mains {time}, 30 s."}),
    ("WD-7", RUB, {"translation": "Frotter les mains {time}, ३० s."}),
    ("WD-8", "off/apron-off/detail", {"translation": "La blouse : {item}, bac {bin}."}),
    ("WD-9", GLOVES, {"translation": "Retirer les moufles."}),
    ("WD-9", "kit/inner-gloves/name", {"translation": "moufles"}),
    ("WD-10", APRON, {"translation": "Retirer le tablier et les gants internes."}),
    ("WD-11", "off/title", {"translation": "De\u0301shabillage"}),
    ("WD-12", "off/title", {"translation": "Retirer \u2068tout"}),
    ("WD-13", "off/title", {"translation": "Retir\u0435r la tenue"}),
    ("WD-14", "off/apron-of/text", {"source": "x", "translation": "y"}),
    ("WD-15", APRON, {"comments": (" translated: a 2026-11-25", " checked: a 2026-11-26")}),
    ("WD-16", APRON, {"comments": (" checked: yes",)}),
]


def spoil(french, context, change):
    blank = Entry(context=context, source="")
    return {context: None if change is None else replace(french.get(context, blank), **change)}


def test_a_whole_locale_has_no_problem(library, messages, locales):
    assert list(coverage_problems(library, messages, locales, BUNDLED_FONTS)) == []


@pytest.mark.parametrize(("code", "context", "change"), SPOILED)
def test_one_fault_is_found_once_at_its_line(
    library, messages, locales, french, rewrite, code, context, change
):
    path = rewrite(spoil(french, context, change))
    found = list(coverage_problems(library, messages, locales, BUNDLED_FONTS))
    assert {problem.code for problem in found} == {code}
    (problem, *_) = found
    assert context in problem.message
    assert problem.locale == "fr"
    assert problem.place.path == path.as_posix()
    assert problem.hint
    if change is not None:
        lines = path.read_text().split("\n")
        assert lines[problem.place.line - 1] == f'msgctxt "{context}"'


def test_a_fault_names_protocol_and_step(library, messages, locales, french, rewrite):
    rewrite({APRON: None})
    (problem,) = coverage_problems(library, messages, locales, BUNDLED_FONTS)
    assert (problem.protocol, problem.step, problem.text) == ("off", "apron-off", APRON)
    assert problem.as_json()["text"] == APRON
    assert problem.severity is Severity.S1


def test_a_locale_in_use_without_catalogue_is_a_fault(library, messages, locales):
    catalogue_path(locales, "fr", CatalogueKind.INTERFACE).unlink()
    (problem,) = coverage_problems(library, messages, locales, BUNDLED_FONTS)
    assert (problem.code, problem.locale) == ("WD-17", "fr")


def in_work(library):
    return replace(
        library, locales={**library.locales, "fr": replace(library.locales["fr"], state=LocaleState.IN_WORK)}
    )


def test_gaps_of_a_locale_in_work_are_progress_and_its_broken_lines_are_faults(
    messages, locales, library, rewrite
):
    path = rewrite({APRON: None, RUB: None})
    working = in_work(library)
    assert list(coverage_problems(working, messages, locales, BUNDLED_FONTS)) == []
    assert len(list(locale_problems(working, messages, locales, "fr", BUNDLED_FONTS))) == 2
    path.write_text(path.read_text() + "\nmsgctxt broken\n")
    found = list(coverage_problems(working, messages, locales, BUNDLED_FONTS))
    assert {problem.code for problem in found} == {"PO-6", "PO-9"}
    assert status_of(found) == 1  # no command can work on the file
    path.write_text(path.read_text(), encoding="utf-16")
    found = list(coverage_problems(working, messages, locales, BUNDLED_FONTS))
    assert [problem.code for problem in found] == ["PO-2"]
    assert status_of(found) == 1


def test_faults_of_texts_that_a_locale_in_work_has_are_told_and_fail_nothing(
    messages, locales, library, rewrite, french
):
    rewrite({RUB: None, APRON: replace(french[APRON], translation="Retirer les gants internes.")})
    found = list(coverage_problems(in_work(library), messages, locales, BUNDLED_FONTS))
    assert {(problem.code, problem.text) for problem in found} == {
        (code, APRON) for code in ("WD-9", "WD-10", "WD-57")
    }
    assert all(problem.is_in_work for problem in found)
    assert status_of(found) == 0
    assert status_of([replace(problem, is_in_work=False) for problem in found]) == 1


def test_a_protocol_in_use_needs_no_words_of_sheets_about_pictures(messages, tmp_path):
    locale = Locale(tag="am", owner="language lead", state=LocaleState.IN_USE, protocols=("off",))
    library = build_library(locales={"am": locale})
    write_changes(with_problems(add_locale(library, messages, tmp_path, "am", BUNDLED_FONTS))[0])
    missing = {problem.text for problem in coverage_problems(library, messages, tmp_path, BUNDLED_FONTS)}
    assert "interface/stop" not in missing  # brought by the programme
    assert {"off/apron-off/text"} <= missing
    for path in tmp_path.rglob("interface.po"):
        path.write_text(re.sub(r'^msgstr ".+"$', 'msgstr ""', path.read_text(), flags=re.MULTILINE))
    missing = {problem.text for problem in coverage_problems(library, messages, tmp_path, BUNDLED_FONTS)}
    assert "interface/stop" in missing
    assert not missing & OTHER_CONTEXTS


def test_a_language_that_no_font_shows_is_one_finding(messages, library, tmp_path):
    locale = Locale(tag="bo", owner="language lead", state=LocaleState.IN_USE)
    found = list(coverage_problems(build_library(locales={"bo": locale}), messages, tmp_path, BUNDLED_FONTS))
    assert [problem.code for problem in found].count("WD-39") == 1


def test_faults_of_the_file_are_told_beside_faults_of_its_texts(library, messages, locales, rewrite):
    path = rewrite({APRON: None})
    path.write_text(path.read_text() + '\nmsgtxt "x"\n')
    assert {problem.code for problem in coverage_problems(library, messages, locales, BUNDLED_FONTS)} == {
        "PO-8",
        "WD-1",
    }


def test_an_unknown_language_and_unknown_numerals_are_told(messages, tmp_path):
    locale = Locale(tag="qaa", owner="language lead", state=LocaleState.IN_USE, numerals="arabic")
    found = list(coverage_problems(build_library(locales={"qaa": locale}), messages, tmp_path, BUNDLED_FONTS))
    assert {"WD-18", "WD-19"} <= {problem.code for problem in found}


def test_a_placeholder_that_its_step_cannot_fill_is_told_at_the_source(library, tmp_path):
    steps = library.protocols["off"].phases[0].steps
    broken = build_library(steps=(replace(steps[1], text="Take off the apron for {time}."), *steps[2:]))
    found = list(
        coverage_problems(
            replace(broken, locales={"en": broken.locales["en"]}),
            library_messages(broken),
            tmp_path,
            BUNDLED_FONTS,
        )
    )
    assert [(problem.code, problem.step) for problem in found] == [("WD-20", "apron-off")]
    assert "{time}" in found[0].message


def test_an_amount_in_an_unknown_unit_is_told_at_the_source(library, tmp_path):
    rub = library.protocols["off"].phases[0].steps[0]
    action = replace(rub.actions[0], amount="a palmful")
    broken = build_library(steps=(replace(rub, text="Take {amount}.", actions=(action,)),))
    found = list(
        coverage_problems(
            replace(broken, locales={"en": broken.locales["en"]}),
            library_messages(broken),
            tmp_path,
            BUNDLED_FONTS,
        )
    )
    assert [problem.code for problem in found] == ["WD-20"]


def test_the_source_text_must_name_what_its_step_takes_off(library, tmp_path):
    steps = library.protocols["off"].phases[0].steps
    unnamed = build_library(steps=(replace(steps[2], text="Take them off."),))
    found = list(
        coverage_problems(
            replace(unnamed, locales={"en": unnamed.locales["en"]}),
            library_messages(unnamed),
            tmp_path,
            BUNDLED_FONTS,
        )
    )
    assert [(problem.code, problem.locale) for problem in found] == [("WD-9", "en")]


def test_every_rule_of_words_has_a_fault_here():
    here = {code for code, *_ in SPOILED} | {"WD-17", "WD-18", "WD-19", "WD-20", "WD-39"}
    elsewhere = {rule.code for rule in (*MEANING, *HYGIENE)}
    assert here == {rule.code for rule in RULES if rule.code.startswith("WD-")} - elsewhere


def test_every_rule_explains_itself():
    for rule in RULES:
        assert all((rule.what, rule.why, rule.example, rule.cure)), rule.code
    assert len({rule.name for rule in RULES}) == len(RULES)


@pytest.mark.parametrize(
    ("source", "translation", "comments"),
    [("P1", "P1", ()), ("OK", "OK", ()), ("Bay area", "Bay area", (" same as source",))],
)
def test_codes_signs_and_texts_meant_to_be_the_same_may_be_the_same(
    messages, locales, library, french, rewrite, source, translation, comments
):
    named = replace(library, wards={"bay": replace(library.wards["bay"], name=source)})
    entry = replace(french["ward/bay/name"], source=source, translation=translation, comments=comments)
    rewrite({"ward/bay/name": entry})
    assert list(coverage_problems(named, library_messages(named), locales, BUNDLED_FONTS)) == []


def test_a_number_of_the_source_may_be_written_in_other_digits(messages, locales, library, french, rewrite):
    named = replace(library, wards={"bay": replace(library.wards["bay"], name="Ward 4")})
    rewrite({"ward/bay/name": replace(french["ward/bay/name"], source="Ward 4", translation="Secteur ٤")})
    assert list(coverage_problems(named, library_messages(named), locales, BUNDLED_FONTS)) == []


def test_latin_codes_may_stand_beside_words_of_other_scripts(messages, locales, library, french, rewrite):
    rewrite({"off/title": replace(french["off/title"], translation="Снять N95 и костюм, тип A")})
    found = {problem.code for problem in coverage_problems(library, messages, locales, BUNDLED_FONTS)}
    assert "WD-13" not in found


def test_scripts_without_spaces_may_write_a_code_into_the_line(messages, locales, library, french, rewrite):
    rewrite({"off/title": replace(french["off/title"], translation="ถอดชุดPPEออก")})
    assert {problem.code for problem in coverage_problems(library, messages, locales, BUNDLED_FONTS)} == {
        "WD-32"
    }


def test_a_short_name_inside_a_longer_word_names_no_other_item(messages, locales, library, french, rewrite):
    """Devanagari words are searched inside, but only a whole word accuses."""
    hindi = replace(library.locales["fr"], tag="hi")
    terms = (Term(id="inner-gloves", source="inner gloves", approved={"hi": ("हुड",)}),)
    changed = replace(library, locales={"hi": hindi}, terms=terms)
    rewrite({"off/title": replace(french["off/title"], translation="हुडदंग")}, tag="hi")
    named = [
        problem
        for problem in coverage_problems(changed, messages, locales, BUNDLED_FONTS)
        if problem.code == "WD-10"
    ]
    assert named == []
    rewrite({"off/title": replace(french["off/title"], translation="हुड उतारें")}, tag="hi")
    named = [
        problem
        for problem in coverage_problems(changed, messages, locales, BUNDLED_FONTS)
        if problem.code == "WD-10"
    ]
    assert len(named) == 1


def test_a_sentence_may_name_an_item_that_its_step_speaks_of(library, locales, french, rewrite):
    steps = library.protocols["off"].phases[0].steps
    glove = replace(steps[2], detail="The inner gloves stay on.", why="They are clean.")
    changed = build_library(steps=(*steps[:2], glove, steps[3]))
    messages = library_messages(changed)
    why = "off/gloves-off/why"
    detail = "off/gloves-off/detail"
    rewrite(
        {
            detail: replace(
                french[why], context=detail, source=glove.detail, translation="Garder les gants internes."
            ),
            why: replace(french[why], source=glove.why, translation="Les gants internes sont propres."),
        }
    )
    assert list(coverage_problems(changed, messages, locales, BUNDLED_FONTS)) == []


def test_a_form_forbidden_for_a_thing_is_free_where_nobody_speaks_of_it(
    messages, locales, library, french, rewrite
):
    rewrite({"off/leave/text": replace(french["off/leave/text"], translation="Sans blouse : {zone} ?")})
    assert list(coverage_problems(library, messages, locales, BUNDLED_FONTS)) == []


def test_a_placeholder_for_the_item_names_it(library, locales, french, rewrite):
    steps = library.protocols["off"].phases[0].steps
    itemised = build_library(steps=(steps[0], replace(steps[1], text="Take off {item}."), *steps[2:]))
    entry = replace(french[APRON], source="Take off {item}.", translation="Retirer {item}.")
    rewrite({APRON: entry})
    assert list(coverage_problems(itemised, library_messages(itemised), locales, BUNDLED_FONTS)) == []


def test_terms_without_forms_in_a_locale_ask_for_nothing(library, messages, locales, french, rewrite):
    rewrite({GLOVES: replace(french[GLOVES], translation="Retirer les moufles.")})
    bare = replace(library, terms=(Term(id="outer-gloves", source="outer gloves", approved={"hi": ("x",)}),))
    assert list(coverage_problems(bare, messages, locales, BUNDLED_FONTS)) == []
