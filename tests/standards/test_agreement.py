"""Interval and kappa against published numbers."""

import pytest

from signage.trials.agreement import cohen_kappa, wilson_interval


@pytest.mark.parametrize(
    ("successes", "trials", "low", "high"),
    [
        # R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I, method 3; from memory
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_the_score_interval_of_published_proportions(successes, trials, low, high):
    assert wilson_interval(successes, trials) == pytest.approx((low, high), abs=5e-5)


@pytest.mark.parametrize(
    ("successes", "trials", "low", "high"),
    [(47, 50, 0.84, 0.98), (17, 20, 0.64, 0.95)],
)
def test_twenty_readers_rarely_prove_a_share(successes, trials, low, high):
    # worked by hand from E. B. Wilson's formula of 1927 with z = 1.96
    assert wilson_interval(successes, trials) == pytest.approx((low, high), abs=5e-3)


def ratings_of(table):
    """Pairs of ratings from a square table: rows are the first rater's categories."""
    return [
        (str(row), str(column))
        for row, counts in enumerate(table)
        for column, count in enumerate(counts)
        for _ in range(count)
    ]


@pytest.mark.parametrize(
    ("table", "kappa"),
    [
        # J. L. Fleiss, B. Levin, M. C. Paik, Statistical Methods for Rates and Proportions, 3rd ed. (2003),
        # chapter 18: 100 patients, two raters, three diagnoses; from memory
        ([[75, 1, 4], [5, 4, 1], [0, 0, 10]], 0.68),
        # R. Artstein, M. Poesio, Computational Linguistics 34 (2008) 555-596, table 1; from memory
        ([[20, 20], [10, 50]], 0.348),
    ],
)
def test_kappa_of_published_tables(table, kappa):
    digits = len(str(kappa).partition(".")[2])
    assert round(cohen_kappa(ratings_of(table)), digits) == kappa
