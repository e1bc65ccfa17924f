import pytest
from hypothesis import given
from hypothesis import strategies as st

from signage.trials.agreement import cohen_kappa, wilson_interval


@given(st.integers(1, 500).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_an_interval_holds_its_share_and_stays_within_bounds(counts):
    successes, trials = counts
    low, high = wilson_interval(successes, trials)
    assert 0.0 <= low <= successes / trials <= high <= 1.0


@given(st.integers(1, 40), st.integers(2, 10))
def test_more_readers_narrow_the_interval(trials, factor):
    low, high = wilson_interval(trials, 2 * trials)
    lower, higher = wilson_interval(trials * factor, 2 * trials * factor)
    assert higher - lower < high - low


@pytest.mark.parametrize(("successes", "trials"), [(1, 0), (3, 2), (-1, 2)])
def test_what_is_no_proportion_has_no_interval(successes, trials):
    with pytest.raises(ValueError, match="no proportion"):
        wilson_interval(successes, trials)


def test_full_agreement_is_one_and_swapped_ratings_lie_below_nought():
    assert cohen_kappa([("a", "a"), ("b", "b")]) == 1
    assert cohen_kappa([("a", "b"), ("b", "a")]) == -1


def test_kappa_is_not_defined_where_chance_alone_agrees_always():
    assert cohen_kappa([]) is None
    assert cohen_kappa([("correct", "correct")] * 9) is None


@given(st.lists(st.tuples(st.sampled_from("abc"), st.sampled_from("abc")), min_size=1))
def test_kappa_does_not_depend_on_who_is_first(pairs):
    swapped = [(second, first) for first, second in pairs]
    assert cohen_kappa(pairs) == pytest.approx(cohen_kappa(swapped))
