"""Every message of four languages, spoilt by each class of error: what is found before it is printed."""

from __future__ import annotations

import random
from collections import Counter, defaultdict
from dataclasses import replace

import demo
import pytest
from spoilt_words import OF_TRANSLATORS, READER_ONLY, Text
from told_words import catalogue_of, findings, tell_everything, write_entries

from signage.ground.problem import Severity
from signage.words.catalogue import CatalogueKind

LANGUAGES = ("fr", "ar", "hi", "am")
SEED = 20261128
CLASSES = {**OF_TRANSLATORS, **READER_ONLY}
CAUGHT = 99
"""Per cent of the texts of every class, in every language, that have a finding of severity 1 or 2."""

ROUNDS = {"headline of another step": 5}
"""Spoilt all at once, a text would no longer stand at the entry it was taken from."""

NOT_IN_EVERY_LANGUAGE = frozenset({"presentation forms", "not normalised", "look-alike letter", "mojibake"})


@pytest.mark.timeout(600)
@pytest.mark.parametrize("tag", LANGUAGES)
def test_every_class_of_error_is_caught_before_print(monkeypatch, tmp_path, tag):
    tell_everything(monkeypatch)
    table, missed = outcomes(tmp_path, tag)
    assert len(OF_TRANSLATORS) >= 25
    idle = [
        name for name, count in table.items() if not count["spoilt"] and name not in NOT_IN_EVERY_LANGUAGE
    ]
    assert not idle, f"a class that spoils nothing shows nothing: {idle}"
    leaky = [
        name
        for name, count in table.items()
        if name not in READER_ONLY and 100 * count["missed"] > count["spoilt"] * (100 - CAUGHT)
    ]
    assert not leaky, f"less than {CAUGHT} % are caught of {leaky}:\n" + "\n".join(missed[:300])


def outcomes(folder, tag):
    """How many texts each class has spoilt, how grave the findings were, and what was missed of them."""
    clean = findings(demo.ROOT / "locales", tag)
    table: dict[str, Counter[str]] = {}
    missed = []
    for name, spoil in CLASSES.items():
        table[name] = Counter()
        for context, text, told in _spoilt_and_told(folder, tag, spoil, ROUNDS.get(name, 1)):
            codes = told - clean[context]
            is_grave = any(severity is Severity.S1 for _, severity in codes)
            table[name]["spoilt"] += 1
            table[name]["S1" if is_grave else "S2" if codes else "missed"] += 1
            if not codes and name not in READER_ONLY:
                missed.append(f"{name} | {tag} | {context} | {text}")
    return table, missed


def _spoilt_and_told(folder, tag, spoil, rounds):
    """Each round spoils every nth text; the others, from which it may be taken, stay as they are."""
    for turn in range(rounds):
        spoilt = write_spoilt(folder, tag, spoil, rounds, turn)
        told = findings(folder, tag)
        yield from ((context, text, told[context]) for context, text in spoilt.items())


def write_spoilt(folder, tag, spoil, rounds=1, turn=0):
    """The catalogues of a language with every text spoilt that the class applies to; what they say now."""
    said = {}
    for kind in CatalogueKind:
        catalogue, roles = catalogue_of(tag, kind)
        beside = defaultdict(list)
        for place, entry in enumerate(catalogue.entries):
            if rounds > 1 and place % rounds == turn:
                continue
            beside[roles.get(entry.context, "")].append(entry.translation)
        entries = []
        for place, entry in enumerate(catalogue.entries):
            role = roles.get(entry.context, "")
            text = Text(entry.context, entry.source, entry.translation, role, tag, tuple(beside[role]))
            changed = spoil(text, random.Random(f"{SEED} {entry.context}"))
            is_due = place % rounds == turn and entry.context != "interface/list-joiner"
            if is_due and changed is not None and changed != entry.translation:
                said[entry.context] = changed
                entry = replace(entry, translation=changed)  # noqa: PLW2901 - the spoilt one takes its place
            entries.append(entry)
        write_entries(folder, tag, kind, replace(catalogue, entries=tuple(entries)))
    return said
