import pytest

from signage.model.picture_trial import Category
from signage.trials.reading import read_trial
from signage.trials.result import Counting, Verdict, judge

PICTURES = ("apron-off", "hood-off", "hand-rub")


def repeated(picture, category, times, start=1):
    return [(picture, f"R{start + index}", category, category) for index in range(times)]


@pytest.fixture
def result(rated):
    def judged(*answers, agreed=(), critical=(), **how):
        return judge(read_trial(rated(*answers, agreed=agreed), PICTURES), critical, **how)

    return judged


def test_the_share_of_correct_answers_decides(result):
    good = repeated("apron-off", "correct", 17) + repeated("apron-off", "wrong", 3, 18)
    poor = repeated("hood-off", "correct", 13) + repeated("hood-off", "none", 7, 14)
    judged = result(*good, *poor)
    apron, hood = judged.pictures
    assert (apron.picture, apron.share, apron.verdict) == ("apron-off", 0.85, Verdict.REACHED)
    assert apron.interval == pytest.approx((0.64, 0.95), abs=5e-3)
    assert apron.counts[Category.WRONG] == 3
    assert (hood.share, hood.verdict) == (0.65, Verdict.FAILS)
    assert "0.650 is below 0.67" in hood.reason
    assert judged.failed == ("hood-off",)


def test_enough_readers_prove_a_picture(result):
    (apron,) = result(*repeated("apron-off", "correct", 47), *repeated("apron-off", "wrong", 3, 48)).pictures
    assert apron.verdict is Verdict.PROVED
    assert apron.strict_verdict is Verdict.REACHED


def test_the_threshold_is_declared_by_the_person(result):
    answers = repeated("apron-off", "correct", 8) + repeated("apron-off", "wrong", 2, 9)
    assert result(*answers, threshold=0.8).failed == ()
    assert result(*answers, threshold=0.81).failed == ("apron-off",)


def test_partly_correct_answers_count_only_where_that_is_declared(result):
    answers = repeated("apron-off", "correct", 6) + repeated("apron-off", "partly", 4, 7)
    assert result(*answers).pictures[0].share == 0.6
    assert result(*answers, counting=Counting.HALF).pictures[0].share == 0.8


def test_one_opposite_answer_on_a_critical_step_fails_whatever_the_share(result):
    answers = repeated("apron-off", "correct", 99) + repeated("apron-off", "opposite", 1, 100)
    (harmless,) = result(*answers).pictures
    (critical,) = result(*answers, critical={"apron-off"}).pictures
    assert harmless.verdict is Verdict.PROVED
    assert critical.verdict is critical.strict_verdict is Verdict.FAILS
    assert "opposite on a critical step" in critical.reason


def test_more_than_one_opposite_answer_in_twenty_misses_the_stricter_threshold(result):
    answers = repeated("apron-off", "correct", 18) + repeated("apron-off", "opposite", 2, 19)
    (apron,) = result(*answers).pictures
    assert (apron.verdict, apron.strict_verdict) == (Verdict.PROVED, Verdict.FAILS)


def test_while_raters_differ_the_worse_rating_counts_and_the_answer_is_listed(result):
    judged = result(("apron-off", "R1", "correct", "opposite"), ("apron-off", "R2", "correct", "correct"))
    assert judged.pictures[0].counts[Category.OPPOSITE] == 1
    assert [(answer.picture, answer.reader) for answer in judged.disagreements] == [("apron-off", "R1")]


def test_what_two_raters_agreed_on_counts(result):
    judged = result(
        ("apron-off", "R1", "correct", "opposite"),
        ("apron-off", "R2", "correct", "correct"),
        agreed=[("apron-off", "R1", "correct")],
    )
    assert judged.pictures[0].share == 1.0
    assert judged.disagreements == ()
    assert judged.settled == 1


def test_agreeing_afterwards_does_not_better_the_agreement_of_the_raters(result):
    answers = [
        ("apron-off", "R1", "correct", "wrong"),
        ("apron-off", "R2", "correct", "correct"),
        ("apron-off", "R3", "wrong", "wrong"),
        ("apron-off", "R4", "wrong", "correct"),
    ]
    before = result(*answers).kappa
    after = result(*answers, agreed=[("apron-off", "R1", "correct"), ("apron-off", "R4", "wrong")]).kappa
    assert before == after == 0.0


def test_json_holds_what_a_programme_needs(result):
    (apron,) = result(*repeated("apron-off", "correct", 2), critical={"apron-off"}).pictures
    record = apron.as_json()
    assert record["counts"] == {"correct": 2, "partly": 0, "wrong": 0, "opposite": 0, "none": 0}
    assert record["verdict"] == "reached"
    assert record["critical"] is True
    assert record["reason"] is None
