from dataclasses import replace
from datetime import date

import pytest
from word_samples import build_library, french_entries, interface_entries, write_po

from signage.ground.errors import UnreadableInputError, WrongUsageError
from signage.model.library import Action, Fixture, Locale, LocaleState
from signage.model.messages import library_messages
from signage.text.font_set import BUNDLED_FONTS
from signage.words.catalogue import CatalogueKind, catalogue_path
from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.wording import MissingMessageError, MissingValueError, open_wording

FSI, LRI, PDI = "\u2068", "\u2066", "\u2069"


@pytest.fixture
def english(library, messages, tmp_path):
    return open_wording(library, messages, tmp_path, "en", BUNDLED_FONTS)


@pytest.fixture
def wording(library, messages, locales):
    return open_wording(library, messages, locales, "fr", BUNDLED_FONTS)


def step(protocol, id_):
    return next(step for step in protocol.steps if step.id == id_)


def test_the_source_language_needs_no_files(english, protocol):
    assert english.gaps == ()
    assert (
        english.step_text(protocol, step(protocol, "rub"), "text")
        == f"Rub the\u00a0hands for {FSI}20\u00a0s{PDI}."
    )
    assert english.fixed("page-of", page="1", pages="2") == f"Page {FSI}1{PDI} of {FSI}2{PDI}"


def test_a_locale_speaks_its_own_words(wording, protocol):
    assert (wording.tag, wording.name, wording.script) == ("fr", "Français", "Latn")
    assert not wording.is_right_to_left
    assert (
        wording.step_text(protocol, step(protocol, "rub"), "text")
        == f"Frotter les\u00a0mains {FSI}20\u202fs{PDI}."
    )


def test_items_bins_and_zones_are_filled_in_the_words_of_the_locale(wording, protocol):
    assert (
        wording.step_text(protocol, step(protocol, "apron-off"), "detail")
        == f"Jeter {FSI}tablier{PDI} dans le\u00a0bac {LRI}A{PDI}."
    )
    assert (
        wording.step_text(protocol, step(protocol, "leave"), "text")
        == f"Passer\u00a0: {FSI}Côté propre{PDI}\u00a0?"
    )


def test_a_text_that_the_step_does_not_have_is_none(wording, protocol):
    assert wording.step_text(protocol, step(protocol, "rub"), "caution") is None


@pytest.mark.parametrize(
    ("change", "reason"),
    [
        ({"translation": ""}, "not translated"),
        ({"translation": " "}, "not translated"),
        ({"translation": "\u200b\u3164"}, "not translated"),
        ({"translation": "Retirer le tablier {0.__class__} {"}, "brace"),
        ({"translation": "Retirer le tablier {bin}."}, "other placeholders"),
        ({"flags": ("fuzzy",)}, "doubtful"),
        ({"flags": ("fuzzy",), "previous": "Take it off."}, "changed"),
        ({"source": "Take it off."}, "changed"),
    ],
)
def test_english_never_takes_the_place_of_a_text_that_cannot_be_printed(
    library, messages, locales, french, rewrite, protocol, change, reason
):
    context = "off/apron-off/text"
    rewrite({context: replace(french[context], **change)})
    wording = open_wording(library, messages, locales, "fr", BUNDLED_FONTS)
    with pytest.raises(MissingMessageError, match=reason) as caught:
        wording.step_text(protocol, step(protocol, "apron-off"), "text")
    assert (caught.value.locale, caught.value.context) == ("fr", context)
    assert caught.value.exit_status == 1
    assert wording.gaps == (context,)


def test_a_locale_without_files_has_no_text_at_all(library, messages, tmp_path):
    wording = open_wording(library, messages, tmp_path, "fr", BUNDLED_FONTS)
    assert len(wording.gaps) == len(messages) + len(FIXED_TEXTS)
    with pytest.raises(MissingMessageError):
        wording.fixed("stop")


def test_an_unknown_context_is_missing_too(english):
    with pytest.raises(MissingMessageError, match="no such text"):
        english.content("kit/cape/name")


def test_a_placeholder_without_value_is_named(english):
    with pytest.raises(MissingValueError, match=r"\{role\}"):
        english.fixed("owner")


def test_a_step_without_seconds_never_prints_a_time(messages, protocol, tmp_path):
    timeless = replace(step(protocol, "rub"), actions=(Action(verb="hygiene", agent="rub"),))
    library = build_library(steps=(timeless,))
    wording = open_wording(library, messages, tmp_path, "en", BUNDLED_FONTS)
    with pytest.raises(MissingValueError, match=r"\{time\}"):
        wording.step_text(library.protocols["off"], timeless, "text")


def test_one_bin_needs_no_list_sign(library, messages, locales, protocol):
    catalogue_path(locales, "fr", CatalogueKind.INTERFACE).unlink()
    wording = open_wording(library, messages, locales, "fr", BUNDLED_FONTS)
    assert f"{LRI}A{PDI}" in wording.step_text(protocol, step(protocol, "apron-off"), "detail")


def test_a_time_may_come_from_the_phase(library, messages, protocol, tmp_path):
    rub = replace(step(protocol, "rub"), actions=(Action(verb="hygiene", agent="rub", part="palms"),))
    phase = replace(protocol.phases[0], steps=(rub,), seconds=40)
    timed = replace(protocol, phases=(phase,))
    wording = open_wording(
        replace(library, protocols={"off": timed}), messages, tmp_path, "en", BUNDLED_FONTS
    )
    assert f"{FSI}40\u00a0s{PDI}" in wording.step_text(timed, rub, "text")


def test_an_amount_is_written_by_the_locale(messages, protocol, tmp_path):
    steps = (replace(step(protocol, "rub"), text="Take {amount}."),)
    library = build_library(steps=steps)
    wording = open_wording(library, library_messages(library), tmp_path, "en", BUNDLED_FONTS)
    assert wording.step_text(library.protocols["off"], steps[0], "text") == f"Take {FSI}10\u00a0ml{PDI}."


def test_two_bins_are_listed(library, protocol, tmp_path):
    fixture = library.wards["bay"].fixtures["bin-a"]
    ward = replace(
        library.wards["bay"], fixtures={"bin-a": fixture, "bin-b": replace(fixture, id="bin-b", code="B")}
    )
    actions = (*step(protocol, "apron-off").actions, Action(verb="discard", bin="bin-b"))
    both = replace(step(protocol, "apron-off"), actions=actions)
    changed = replace(build_library(steps=(both,)), wards={"bay": ward})
    wording = open_wording(changed, library_messages(changed), tmp_path, "en", BUNDLED_FONTS)
    text = wording.step_text(changed.protocols["off"], both, "detail")
    assert f"{LRI}A{PDI}, {LRI}B{PDI}" in text


def test_codes_run_from_left_to_right_and_lists_are_isolated(english):
    assert english.code("P1") == f"{LRI}P1{PDI}"
    assert english.join(["apron", "hood"]) == f"{FSI}apron{PDI}, {FSI}hood{PDI}"


def arabic(numerals=None):
    return {"ar": Locale(tag="ar", owner="language lead", state=LocaleState.IN_USE, numerals=numerals)}


def test_arabic_runs_right_to_left_in_arabic_indic_digits(messages, tmp_path):
    wording = open_wording(build_library(locales=arabic()), messages, tmp_path, "ar", BUNDLED_FONTS)
    assert wording.is_right_to_left
    assert wording.script == "Arab"
    assert (wording.seconds(20), wording.millimetres(50)) == ("٢٠\u00a0ث", "٥٠\u00a0مم")
    assert wording.date(date(2027, 5, 31)) == "٣١ مايو ٢٠٢٧"


def test_the_library_may_choose_other_numerals(messages, tmp_path):
    wording = open_wording(build_library(locales=arabic("latn")), messages, tmp_path, "ar", BUNDLED_FONTS)
    assert wording.number(20) == "20"


def test_unknown_numerals_are_refused(messages, tmp_path):
    with pytest.raises(WrongUsageError, match="arabic"):
        open_wording(build_library(locales=arabic("arabic")), messages, tmp_path, "ar", BUNDLED_FONTS)


def test_a_locale_that_the_library_does_not_have_is_refused(library, messages, locales):
    with pytest.raises(WrongUsageError, match="de"):
        open_wording(library, messages, locales, "de", BUNDLED_FONTS)


def test_all_faults_of_both_files_are_told_at_once(library, messages, locales):
    for kind in CatalogueKind:
        path = catalogue_path(locales, "fr", kind)
        path.write_bytes(path.read_bytes() + b'\nmsgctxt "x\n')
    with pytest.raises(UnreadableInputError) as caught:
        open_wording(library, messages, locales, "fr", BUNDLED_FONTS)
    assert {problem.place.path.rsplit("/", 1)[1] for problem in caught.value.problems} == {
        "content.po",
        "interface.po",
    }


def test_another_source_language_needs_the_fixed_words_translated(messages, tmp_path):
    library = replace(build_library(), source_locale="fr")
    wording = open_wording(library, messages, tmp_path, "fr", BUNDLED_FONTS)
    assert wording.content("kit/apron/name") == "apron"
    with pytest.raises(MissingMessageError):
        wording.fixed("stop")
    english = open_wording(library, messages, tmp_path, "en", BUNDLED_FONTS)
    assert english.fixed("stop") == "Stop"
    with pytest.raises(MissingMessageError):
        english.content("kit/apron/name")


def test_what_update_writes_can_be_opened(library, messages, tmp_path):
    write_po(tmp_path, "fr", CatalogueKind.CONTENT, french_entries(library).values())
    write_po(tmp_path, "fr", CatalogueKind.INTERFACE, interface_entries().values())
    assert open_wording(library, messages, tmp_path, "fr", BUNDLED_FONTS).gaps == ()


def test_a_bin_without_a_letter_is_called_by_its_name(library, protocol, tmp_path):
    bag = Fixture(id="bag", kind="bin", zone="room", name="Linen bag")
    into = (Action(verb="discard", bin="bag"),)
    put = replace(step(protocol, "apron-off"), detail="Into {bin}.", actions=into)
    ward = replace(library.wards["bay"], fixtures={"bag": bag})
    changed = replace(build_library(steps=(put,)), wards={"bay": ward})
    assert "ward/bay/fixture/bag" in {message.context for message in library_messages(changed)}
    words = open_wording(changed, library_messages(changed), tmp_path, "en", BUNDLED_FONTS)
    text = words.step_text(changed.protocols["off"], put, "detail")
    assert text == f"Into {FSI}Linen bag{PDI}."


def test_a_source_text_that_cannot_be_set_is_a_gap_in_its_own_language(library, messages, tmp_path):
    """Three hundred marks on one letter would not fit into the numbers of a font (OpenType, glyf table)."""
    named = replace(library, name="Harbour z" + "\u0324" * 300)
    wording = open_wording(named, library_messages(named), tmp_path, "en", BUNDLED_FONTS)
    assert wording.gaps == ("library/name",)
    with pytest.raises(MissingMessageError, match="marks"):
        wording.content("library/name")
