from dataclasses import replace

from content_samples import found, library, subject, with_protocol

from signage.check.content_rules.long_headline import RULE


def with_headline(text, language="en"):
    phase = library().protocols["contact-room"].phases[0]
    step = replace(phase.steps[0], text=text)
    phases = (replace(phase, steps=(step, *phase.steps[1:])), *library().protocols["contact-room"].phases[1:])
    changed = replace(with_protocol(phases=phases), source_locale=language)
    return step, found(RULE, subject(changed))


def test_twelve_words_are_a_headline_and_thirteen_are_not():
    words = "Take off both of the outer gloves slowly and carefully, without haste"
    assert with_headline(words)[1] == []
    step, (problem,) = with_headline(f"{words} now")
    assert problem.message.endswith("has 13 words; at most 12 are wanted.")
    assert (problem.protocol, problem.step, problem.place) == ("contact-room", step.id, step.at("text"))


def test_dashes_and_joined_words_do_not_count_twice():
    assert with_headline("Put on the full-length, tear-off apron – after the rub – for {time} or more")[1]
    assert with_headline("Put on the full-length, tear-off apron – after the rub – for {time}")[1] == []


def test_words_without_spaces_are_counted_by_dictionary():
    # Thai for "take off the outer gloves", of four words by ICU's dictionary; unverified
    assert with_headline("ถอดถุงมือชั้นนอก" * 3, "th")[1] == []
    assert with_headline("ถอดถุงมือชั้นนอก" * 4, "th")[1]
