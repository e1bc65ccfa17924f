from datetime import date

from signage.words.catalogue import Entry, EntryState
from signage.words.marks import checked_mark, end_checks, is_mark, read_marks, seal, withdraw_checks


def entry(*comments, translation="Retirer le tablier.", flags=()):
    return Entry(
        context="x", source="Take off the apron.", translation=translation, comments=comments, flags=flags
    )


def test_who_and_when_are_read_from_comments_of_the_documented_form():
    marks = read_marks([" translated: language-lead 2026-11-25", " checked: nurse.2 2026-11-26", " a remark"])
    assert (marks.translated.person, marks.translated.day) == ("language-lead", date(2026, 11, 25))
    assert (marks.checked.person, marks.checked.day) == ("nurse.2", date(2026, 11, 26))
    assert marks.unreadable == ()


def test_machine_origin_and_same_as_source_are_read():
    marks = read_marks([" origin: machine", " same as source"])
    assert marks.is_machine
    assert marks.is_same_as_source


def test_a_comment_that_only_looks_like_a_mark_is_named():
    assert read_marks([" checked: yes"]).unreadable == ("checked: yes",)
    assert read_marks([" translated: nurse 2026-13-40"]).unreadable == ("translated: nurse 2026-13-40",)
    assert read_marks([" origin: my cousin"]).unreadable == ("origin: my cousin",)


def test_a_sentence_that_begins_with_a_mark_word_is_a_remark():
    assert read_marks([" checked the gender of the noun", " translated twice"]).unreadable == ()


def test_a_remark_is_told_from_a_mark():
    assert is_mark(" origin: machine")
    assert not is_mark(" origin of the word: Latin")


def test_a_missing_text_is_missing_whoever_signed_it():
    assert entry(" checked: b 2026-11-26", translation="").state is EntryState.MISSING


def test_a_doubtful_text_is_doubtful_although_it_was_checked():
    assert entry(" checked: b 2026-11-26", flags=("fuzzy",)).state is EntryState.DOUBTFUL


TEXTS = ("Take off the apron.", "Retirer le tablier.")
BY_B = checked_mark("b", date(2026, 11, 26), *TEXTS)


def test_a_text_checked_by_another_person_is_checked():
    assert entry(" translated: a 2026-11-25", BY_B).state is EntryState.CHECKED


def test_a_mark_typed_by_hand_without_its_seal_does_not_count_and_no_update_seals_it():
    typed = " checked: b 2026-11-26"
    assert end_checks([typed], *TEXTS) == (typed,)
    assert entry(" translated: a 2026-11-25", typed).state is EntryState.TRANSLATED


def test_a_text_checked_by_its_translator_is_not_checked():
    assert entry(" translated: a 2026-11-25", " checked: a 2026-11-26").state is EntryState.TRANSLATED


def test_a_text_changed_after_the_check_is_no_longer_checked():
    assert entry(BY_B).state is EntryState.CHECKED
    assert entry(BY_B, translation="Retirer le grand tablier.").state is EntryState.TRANSLATED


def test_a_check_of_the_text_as_it_is_stays_as_it_is():
    assert end_checks([BY_B, " remark"], *TEXTS) == (BY_B, " remark")
    assert f" checked: b 2026-11-26 ({seal(*TEXTS)})" == BY_B


def test_a_seal_of_another_text_withdraws_the_check_but_keeps_the_comment():
    withdrawn = end_checks([BY_B], TEXTS[0], "other text")
    assert withdrawn[0].startswith(" was checked: b 2026-11-26")
    assert read_marks(withdrawn).checked is None
    assert read_marks(withdrawn).unreadable == ()


def test_withdrawing_touches_no_other_comment():
    comments = [" translated: a 2026-11-25", " checked by eye"]
    assert withdraw_checks(comments) == tuple(comments)
