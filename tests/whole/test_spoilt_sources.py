"""Every source text of the demo, spoilt by each class of error: what the loader and the rules tell of it."""

import json
import random
import shutil
from collections import Counter, defaultdict
from datetime import date
from functools import lru_cache
from pathlib import Path

import demo
import pytest
import yaml
from spoilt_sources import OF_AUTHORS, READER_ONLY, Source
from told_words import tell_everything

from signage.ground.errors import UnreadableInputError
from signage.produce.release import Releases
from signage.project import Project, open_project
from signage.text.font_set import BUNDLED_FONTS
from signage.words.coverage import locale_problems

SEED = 20261128
CLASSES = {**OF_AUTHORS, **READER_ONLY}
ROUNDS = {"headline of another step": 5, "detail in the place of the headline": 3}
"""Spoilt all at once, a headline would no longer stand at its step, nor be an exception among headlines."""

NOT_IN_ENGLISH = frozenset({"not normalised", "letter of another bin"})
ABOUT_THE_STEP = frozenset({"WD-59"})
"""Rules that tell at the headline what is wrong with the texts of the step together."""

CAUGHT = 99
"""Per cent of the texts of every class that have a finding."""


@pytest.mark.timeout(300)
def test_every_class_of_error_of_an_author_is_told(monkeypatch, tmp_path):
    tell_everything(monkeypatch)
    table, missed = outcomes(tmp_path / "content")
    assert len(OF_AUTHORS) >= 20
    idle = [name for name, count in table.items() if not count["spoilt"] and name not in NOT_IN_ENGLISH]
    assert not idle, f"a class that spoils nothing shows nothing: {idle}"
    leaky = [
        name
        for name, count in table.items()
        if name not in READER_ONLY and 100 * count["missed"] > count["spoilt"] * (100 - CAUGHT)
    ]
    assert not leaky, f"less than {CAUGHT} % are caught of {leaky}:\n" + "\n".join(missed[:300])


def outcomes(content):
    """How many texts each class has spoilt, how grave the findings were, and what was missed of them."""
    shutil.copytree(demo.ROOT / "content", content)
    clean = told_of(content)
    assert clean is not None
    table = {}
    missed = []
    for name, spoil in CLASSES.items():
        table[name] = Counter()
        rounds = ROUNDS.get(name, 1)
        for turn in range(rounds):
            spoilt = spoilt_texts(spoil, rounds, turn)
            told = all_told(content, spoilt)
            for context, text in spoilt.items():
                new = told[context] - clean[context]
                gravest = min((severity.value for _, severity in new), default="missed")
                table[name]["spoilt"] += 1
                table[name][gravest] += 1
                if not new and name not in READER_ONLY:
                    missed.append(f"{name} | {context} | {text}")
    return table, missed


def spoilt_texts(spoil, rounds, turn):
    """What the class makes of every nth source text, by context."""
    steps = {(p.id, s.id): s for p in demo.project().library.protocols.values() for s in p.steps}
    texts = [(message, steps.get((message.protocol, message.step))) for message, _ in written()]
    beside = [each for place, each in enumerate(texts) if rounds == 1 or place % rounds != turn]
    spoilt = {}
    for place, (message, step) in enumerate(texts):
        role = message.role
        others = tuple(m.source for m, other in beside if m.role is role and deed(other) != deed(step))
        text = Source(message.context, message.source, message.source, role.value, "en", others, step)
        changed = spoil(text, random.Random(f"{SEED} {message.context}")) if place % rounds == turn else None
        if changed is not None and changed != message.source:
            spoilt[message.context] = changed
    return spoilt


def deed(step):
    """What a step is seen to do: its picture and its movements, but for where the thing goes."""
    return step and (step.picture, [(a.verb, a.item, a.layer, a.agent, a.part) for a in step.actions])


def all_told(content, spoilt):
    """Findings by context. What the loader refuses is set right again, so that the rules are reached."""
    told = defaultdict(set)
    left = dict(spoilt)
    while (refusal := refusal_of(content, left)) is not None:
        known = len(left)
        for place, problem in refusal.items():
            told[place].add((problem.code, problem.severity))
            left.pop(place, None)
        assert len(left) < known, refusal
    for context, codes in told_of(content).items():
        told[context] |= codes
    return told


def refusal_of(content, spoilt):
    """The last problem that the loader has with each text; None where it takes the content."""
    places = write(content, spoilt)
    try:
        open_project(content, demo.ROOT / "locales")
    except UnreadableInputError as refusal:
        return {places.get((Path(p.place.path).name, p.place.line)): p for p in refusal.problems}
    return None


def told_of(content):
    return told_of_project(open_project(content, demo.ROOT / "locales"))


def told_of_project(project: Project):
    by_place = {(Path(m.place.path).name, m.place.line): m.context for m in project.messages if m.place.path}
    told = defaultdict(set)
    words = list(
        locale_problems(
            project.library, project.messages, project.locales, project.library.source_locale, BUNDLED_FONTS
        )
    )
    for problem in (*words, *Releases(project, date(2026, 11, 28)).content_problems):
        context = problem.text or by_place.get((Path(problem.place.path).name, problem.place.line))
        about = [context]
        if problem.code in ABOUT_THE_STEP:
            about = [
                m.context
                for m in project.messages
                if (m.protocol, m.step) == (problem.protocol, problem.step)
            ]
        for each in about:
            told[each].add((problem.code, problem.severity))
    return told


def write(content, spoilt):
    """The files with these texts in place of their own; the context of each by file and line."""
    places = {}
    by_file = defaultdict(list)
    for message, node in written():
        by_file[message.place.path].append((node.start_mark.index, node.end_mark.index, message.context))
        places[Path(message.place.path).name, node.start_mark.line + 1] = message.context
    for name, nodes in by_file.items():
        path = Path(name)
        text = path.read_text(encoding="utf-8")
        for start, end, context in sorted(nodes, reverse=True):
            if context in spoilt:
                text = text[:start] + json.dumps(spoilt[context], ensure_ascii=False) + text[end:]
        (content / path.relative_to(demo.ROOT / "content")).write_text(text, encoding="utf-8")
    return places


@lru_cache(maxsize=1)
def written():
    """Each message that stands in a file of the demo, with its scalar."""
    found = []
    scalars = {}
    for message in demo.project().messages:
        path = message.place.path
        if not path or not path.endswith(".yaml") or not Path(path).is_relative_to(demo.ROOT / "content"):
            continue
        if path not in scalars:
            scalars[path] = dict(scalars_of(yaml.compose(Path(path).read_text(encoding="utf-8"))))
        found.append((message, scalars[path][message.place.line, message.place.column]))
    return found


def scalars_of(node):
    if isinstance(node, yaml.ScalarNode):
        yield (node.start_mark.line + 1, node.start_mark.column + 1), node
    elif isinstance(node, yaml.MappingNode):
        for _, value in node.value:
            yield from scalars_of(value)
    else:
        for value in node.value:
            yield from scalars_of(value)
