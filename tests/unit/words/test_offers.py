"""A translation that is there already is offered where its text has none, and never printed unasked."""

from dataclasses import replace
from datetime import date

import pytest
from word_samples import build_library

from signage.model.messages import library_messages
from signage.text.font_set import BUNDLED_FONTS
from signage.words.catalogue import CatalogueKind, EntryState, catalogue_path
from signage.words.marks import checked_mark
from signage.words.po.reader import read_catalogue_file
from signage.words.update import update, write_changes
from signage.words.wording import MissingMessageError, open_wording

CHECKED = (" translated: a 2026-11-25", " checked: b 2026-11-26")


def run_update(library, locales):
    return write_changes(update(library, library_messages(library), locales))


def content(locales, kind=CatalogueKind.CONTENT):
    result = read_catalogue_file(catalogue_path(locales, "fr", kind), "fr")
    assert result.problems == ()
    return result.catalogue.by_context


def renamed(library, change):
    """The library with other ids of protocol and steps."""
    protocol = library.protocols["off"]
    phase = protocol.phases[0]
    steps = tuple(replace(step, id=change.get(step.id, step.id)) for step in phase.steps)
    name = change.get("off", "off")
    moved = replace(protocol, id=name, phases=(replace(phase, steps=steps),))
    return replace(library, protocols={name: moved})


@pytest.mark.parametrize("change", [{"rub": "rub-first"}, {"off": "doffing"}, {"off": "doffing", "rub": "r"}])
def test_a_new_id_of_step_or_protocol_loses_no_translation(library, locales, french, rewrite, change):
    rewrite({"off/rub/text": replace(french["off/rub/text"], comments=CHECKED)})
    run_update(library, locales)
    other = renamed(library, change)
    run_update(other, locales)
    entries = content(locales)
    for old, entry in french.items():
        parts = [change.get(part, part) for part in old.split("/")]
        found = entries["/".join(parts)]
        assert found.translation == entry.translation
        is_moved = "/".join(parts) != old
        assert (found.state is EntryState.DOUBTFUL) == is_moved, found
        assert any(comment == f" offered from {old}" for comment in found.comments) == is_moved
    new = entries["/".join(change.get(part, part) for part in ("off", "rub", "text"))]
    assert new.marks.checked is None
    assert any("was checked: b" in comment for comment in new.comments)
    wording = open_wording(other, library_messages(other), locales, "fr", BUNDLED_FONTS)
    with pytest.raises(MissingMessageError, match="doubtful"):
        wording.content(new.context)
    assert run_update(other, locales) == 0


def test_what_a_person_has_accepted_is_an_ordinary_translation(library, locales, rewrite):
    other = renamed(library, {"rub": "rub-first"})
    run_update(other, locales)
    entries = content(locales)
    accepted = replace(entries["off/rub-first/text"], flags=())
    rewrite({"off/rub/text": None, accepted.context: accepted})
    run_update(other, locales)
    found = content(locales)[accepted.context]
    assert found.state is EntryState.TRANSLATED
    assert not any("offered" in comment for comment in found.comments)
    assert run_update(other, locales) == 0


def test_the_same_sentence_elsewhere_is_offered_and_a_doubtful_one_is_not(library, locales, french, rewrite):
    protocol = library.protocols["off"]
    again = replace(protocol.steps[0], id="rub-again")
    twice = build_library(steps=(*protocol.steps, again))
    run_update(twice, locales)
    offered = content(locales)["off/rub-again/text"]
    assert offered.translation == french["off/rub/text"].translation
    assert offered.is_doubtful
    rewrite({"off/rub/text": replace(french["off/rub/text"], flags=("fuzzy",))})
    run_update(twice, locales)
    assert content(locales)["off/rub-again/text"].state is EntryState.MISSING
    assert run_update(twice, locales) == 0


def test_of_two_steps_with_one_text_each_gets_its_own_back(library, locales, french, rewrite):
    protocol = library.protocols["off"]
    first = protocol.steps[0]
    steps = (first, replace(first, id="rub-last"), *protocol.steps[1:])
    twice = build_library(steps=steps)
    last = replace(
        french["off/rub/text"], context="off/rub-last/text", translation="Frotter à la fin {time}."
    )
    rewrite({last.context: last})
    run_update(twice, locales)
    moved = replace(twice.protocols["off"], id="doffing")
    run_update(replace(twice, protocols={"doffing": moved}), locales)
    entries = content(locales)
    assert entries["doffing/rub-last/text"].translation == last.translation
    assert entries["doffing/rub/text"].translation == french["off/rub/text"].translation


def test_a_check_counts_with_its_seal_alone_and_ends_with_an_edit(library, locales, french, rewrite):
    entry = replace(french["off/rub/text"], comments=CHECKED)
    rewrite({entry.context: entry})
    run_update(library, locales)
    assert content(locales)[entry.context].state is EntryState.TRANSLATED
    mark = checked_mark("b", date(2026, 11, 26), entry.source, entry.translation)
    rewrite({entry.context: replace(entry, comments=(CHECKED[0], mark))})
    run_update(library, locales)
    sealed = content(locales)[entry.context]
    assert sealed.state is EntryState.CHECKED
    rewrite({entry.context: replace(sealed, translation="Frotter bien {time}.")})
    assert content(locales)[entry.context].state is EntryState.TRANSLATED
    run_update(library, locales)
    edited = content(locales)[entry.context]
    assert edited.marks.checked is None
    assert any("was checked: b 2026-11-26" in comment for comment in edited.comments)
    assert run_update(library, locales) == 0
