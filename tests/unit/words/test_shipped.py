"""The words that the programme brings are those of the demo, and nobody's signature comes with them."""

from dataclasses import replace
from importlib.resources import files

import demo

from signage.cli.words import shipped_from
from signage.text.font_set import BUNDLED_FONTS
from signage.words.catalogue import EntryState
from signage.words.coverage import fixed_messages, locale_problems
from signage.words.fixed.interface import FIXED_TEXTS
from signage.words.meaning.checks import MeaningCheck
from signage.words.shipped import shipped_entries, shipped_tags


def test_they_are_made_from_the_catalogues_of_the_demo():
    folder = files("signage.words") / "shipped_words"
    stored = {f"{tag}.po": (folder / f"{tag}.po").read_bytes() for tag in shipped_tags()}
    assert stored == shipped_from(demo.project()), (
        "run 'signage words ship signage/words/shipped_words' after a change of locales/"
    )


def test_every_fixed_word_of_a_language_in_use_is_there_unverified():
    for tag in shipped_tags():
        entries = shipped_entries(tag)
        assert {f"interface/{name}" for name in FIXED_TEXTS} <= entries.keys()
        assert any(context.startswith("picture/") for context in entries)
        for entry in entries.values():
            assert entry.marks.is_machine
            assert entry.state is EntryState.TRANSLATED


def test_a_region_takes_the_words_of_its_language_in_the_same_script():
    assert shipped_entries("fr-CA") == shipped_entries("fr") != {}
    assert shipped_entries("pt") == {}
    assert shipped_entries("hi-Latn") == {}


def test_they_say_what_their_sources_say_by_the_glossary_of_the_demo():
    """Where a library has them as they are, its own glossary, which may be older, does not judge them."""
    library = demo.project().library
    fixed = {message.context: message for message in fixed_messages()}
    for tag in shipped_tags():
        texts = {context: entry.translation for context, entry in shipped_entries(tag).items()}
        check = MeaningCheck(library, tag, texts, "en")
        for context, message in fixed.items():
            assert not list(check.faults_of_text(message, texts[context])), (tag, context)


def test_an_older_glossary_does_not_refuse_the_words_of_the_programme():
    own = demo.project()
    markers = replace(own.library.vocabulary.negation["fr"], markers=("ne … point",))
    vocabulary = replace(own.library.vocabulary, negation={**own.library.vocabulary.negation, "fr": markers})
    older = replace(own.library, vocabulary=vocabulary)
    told = list(locale_problems(older, own.messages, own.locales, "fr", BUNDLED_FONTS))
    assert any(problem.code == "WD-44" for problem in told)
    assert not [
        problem.text for problem in told if (problem.text or "").startswith(("interface/", "picture/"))
    ]
