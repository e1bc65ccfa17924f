import pytest

from signage.ground.errors import UnreadableInputError
from signage.model.picture_trial import Category, empty_table, trial_forms
from signage.trials.reading import read_trial

PICTURES = ("apron-off", "hood-off", "hand-rub")
GOOD = ("A,1,apron-off,R1,1,correct", "A,1,apron-off,R1,2,partly")


def problems_of(path):
    with pytest.raises(UnreadableInputError) as caught:
        read_trial(path, PICTURES)
    assert all(problem.hint for problem in caught.value.problems)
    return [(problem.place.line, problem.code) for problem in caught.value.problems]


def messages_of(path):
    with pytest.raises(UnreadableInputError) as caught:
        read_trial(path, PICTURES)
    return [f"{problem.message} {problem.hint}" for problem in caught.value.problems]


def test_two_ratings_make_an_answer(filled):
    trial = read_trial(filled(*GOOD), PICTURES)
    assert trial.raters == ("1", "2")
    (answer,) = trial.answers
    assert (answer.picture, answer.reader, answer.agreed) == ("apron-off", "R1", None)
    assert (answer.first.category, answer.second.category) == (Category.CORRECT, Category.PARTLY)
    assert (answer.first.place.line, answer.second.place.line) == (2, 3)


def test_columns_may_stand_in_any_order_with_capitals_and_remarks(filled):
    path = filled(
        "Correct,1,R1,apron-off,1,a,She takes it off",
        "WRONG,2,R1,apron-off,1,A,",
        header="Category,Rater,Reader,Picture,Number,Form,Answer",
    )
    (answer,) = read_trial(path, PICTURES).answers
    assert (answer.first.category, answer.second.category) == (Category.CORRECT, Category.WRONG)


def test_a_third_row_settles_what_two_raters_saw_differently(filled):
    (answer,) = read_trial(filled(*GOOD, "A,1,apron-off,R1,agreed,wrong"), PICTURES).answers
    assert answer.agreed.category is Category.WRONG


def test_rows_that_nobody_has_filled_in_count_for_nothing(filled):
    trial = read_trial(filled(*GOOD, "A,2,hood-off,,1,", "A,2,hood-off,,2,"), PICTURES)
    assert len(trial.answers) == 1
    assert trial.blank_rows == 2


def test_the_table_that_is_drawn_can_be_read_once_it_is_filled_in(tmp_path):
    text = empty_table(trial_forms(PICTURES, 4))
    path = tmp_path / "trial.csv"
    path.write_text(text, encoding="utf-8", newline="")
    assert "No row of this table has a reader" in messages_of(path)[0]
    path.write_text(text.replace(",,", ",R1,").replace(",\r\n", ",correct\r\n"), encoding="utf-8", newline="")
    assert {code for _, code in problems_of(path)} == {"TR-7"}  # one reader on both forms
    block = text.split("\r\n")
    of_form_a = "\r\n".join([block[0], *(row for row in block if row.startswith("A,")), ""])
    filled_in = of_form_a.replace(",,", ",R1,").replace(",\r\n", ",correct\r\n")
    path.write_text(filled_in, encoding="utf-8", newline="")
    assert len(read_trial(path, PICTURES).answers) == 3


@pytest.mark.parametrize(
    ("row", "code", "words"),
    [
        ("A,1,apron-of,R2,1,correct", "TR-5", "Did you mean 'apron-off'?"),
        ("A,1,apron-off,R2,1,corect", "TR-4", "Did you mean 'correct'?"),
        ("A,1,apron-off,R2,1,", "TR-4", "Write none"),
        ("A,1,apron-off,,1,correct", "TR-6", "is not an id"),
        ("A,1,apron-off,Maria,1,correct", "TR-6", "'Maria' is not an id with a number"),
        ("A,1,apron-off,R 2,1,correct", "TR-6", "is not an id"),
        ("A,1,apron-off,R2,,correct", "TR-6", "The rater ''"),
        ("C,1,apron-off,R2,1,correct", "TR-4", "neither A nor B"),
        ("A,0,apron-off,R2,1,correct", "TR-4", "not the number"),
        ("A,1,apron-off,R2,1", "TR-3", "5 fields"),
        ("A,1,apron-off,R1,1,wrong", "TR-7", "in line 2 already"),
    ],
)
def test_a_fault_of_a_row_is_told_with_its_line(filled, row, code, words):
    path = filled(*GOOD, row)
    assert (4, code) in problems_of(path)
    assert any(words in message for message in messages_of(path))


def test_a_number_cannot_stand_for_two_pictures(filled):
    path = filled(*GOOD, "A,1,hood-off,R2,1,correct", "A,1,hood-off,R2,2,correct")
    assert problems_of(path) == [(4, "TR-8"), (5, "TR-8")]


def test_the_two_forms_count_apart(filled):
    trial = read_trial(filled(*GOOD, "B,1,hood-off,R2,1,correct", "B,1,hood-off,R2,2,wrong"), PICTURES)
    assert len(trial.answers) == 2


@pytest.mark.parametrize("rows", [GOOD[:1], (*GOOD, "A,1,apron-off,R1,3,correct")])
def test_one_rater_or_three_are_not_two(filled, rows):
    assert problems_of(filled(*rows)) == [(1, "TR-9")]


def test_an_answer_that_only_one_has_rated_is_named(filled):
    path = filled(*GOOD, "A,2,hood-off,R1,1,correct", "A,3,hand-rub,R1,agreed,correct")
    assert problems_of(path) == [(4, "TR-10"), (5, "TR-10")]
    assert "no rating of rater 2" in messages_of(path)[0]
    assert "no rating of rater 1 and 2" in messages_of(path)[1]


def test_missing_and_unknown_columns_come_in_one_report(filled):
    path = filled("A", header="form;number;picture;reader;rator;form")
    messages = messages_of(path)
    assert len(messages) == 4
    assert any("'rater' is missing" in message for message in messages)
    assert any("Did you mean 'rater'?" in message for message in messages)
    assert any("'form' is there twice" in message for message in messages)


def test_all_faults_of_all_rows_come_in_one_report(filled):
    path = filled("A,1,apron-of,R1,1,corect", "C,1,apron-off,R1,1,correct")
    assert problems_of(path) == [(2, "TR-4"), (2, "TR-5"), (3, "TR-4")]


def test_a_hopeless_table_is_not_read_to_its_end(filled):
    found = problems_of(filled(*["A,1,x,R1,1,correct"] * 5000))
    assert len(found) == 101
    assert (101, "TR-1") in found
