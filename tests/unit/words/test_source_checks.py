"""What is wrong with source texts that only their steps betray, on the demo with one thing changed."""

from dataclasses import replace

import demo

from signage.model.messages import library_messages
from signage.text.font_set import BUNDLED_FONTS
from signage.words.coverage import locale_problems

RULES = {"WD-36", "WD-57", "WD-58", "WD-59", "WD-60"}


def told(protocol, **changes):
    """Code and step of what the rules tell of the demo with these fields of steps changed."""
    project = demo.project()
    old = project.library.protocols[protocol]
    phases = tuple(
        replace(phase, steps=tuple(changed(step, changes) for step in phase.steps)) for phase in old.phases
    )
    protocols = {**project.library.protocols, protocol: replace(old, phases=phases)}
    library = replace(project.library, protocols=protocols)
    found = list(locale_problems(library, library_messages(library), project.locales, "en", BUNDLED_FONTS))
    return {(problem.code, problem.step) for problem in found if problem.code in RULES}


def changed(step, changes):
    return replace(step, **changes.get(step.id.replace("-", "_"), {}))


def test_headlines_are_no_sentences_where_others_are_none():
    assert told("waste-out", label_bag={"text": "Label the bag."}) == {("WD-58", "label-bag")}
    assert told("waste-out", label_bag={"text": "Stop! Label the bag. Ask"}) == {("WD-58", "label-bag")}
    assert told("waste-out", label_bag={"text": "Torn? Take a new bag"}) == set()


def test_the_mark_of_a_negation_needs_one():
    near = {"detail": "Lower it by the neck, near your body."}
    assert told("waste-out", bag_away=near) == {("WD-59", "bag-away")}
    assert told("waste-out", bag_away={**near, "caution": "Never squeeze it."}) == set()
    assert told("waste-out", bag_away={**near, "negation": False}) == set()


def test_a_headline_stands_at_one_kind_of_step():
    copied = told("waste-out", label_bag={"text": "Twist the bag shut"})
    assert copied == {("WD-60", "twist-bag"), ("WD-60", "label-bag")}
    # the picture is the same, or the step does the same
    assert told("waste-out", label_bag={"text": "Twist the bag shut", "picture": "bag-close"}) == set()
    assert told("waste-out", porter_rub={"picture": "observer-check"}) == set()


def test_the_small_words_of_a_source_text_are_of_its_language():
    german = {"why": "Die Tasche kommt von der anderen Seite und ist nicht sauber."}
    assert told("waste-out", label_bag=german) == {("WD-36", "label-bag")}
    assert told("waste-out", label_bag={"why": "Porter, Ward Administration."}) == set()


def test_hand_hygiene_names_no_other_kit():
    assert told("waste-out", porter_rub={"text": "Rub boot covers"}) == {("WD-57", "porter-rub")}
    assert told("waste-out", porter_rub={"text": "Rub both hands under the sleeves"}) == set()
