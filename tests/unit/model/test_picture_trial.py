import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from signage.model.picture_trial import COLUMNS, FORMS, empty_table, trial_forms

NAMES = [f"picture-{number}" for number in range(1, 31)]
names = st.lists(st.text("abcdefgh-", min_size=1, max_size=6), min_size=2, max_size=12, unique=True)


@given(names, st.integers(0, 999_999))
def test_both_forms_show_every_picture_once_in_different_orders(pictures, seed):
    forms = trial_forms(pictures, seed)
    assert tuple(forms) == FORMS
    first, second = forms.values()
    assert sorted(first) == sorted(second) == sorted(pictures)
    assert first != second


def test_a_seed_gives_the_same_orders_again_and_another_seed_others():
    assert trial_forms(NAMES, 7) == trial_forms(reversed(NAMES), 7)
    assert trial_forms(NAMES, 7) != trial_forms(NAMES, 8)


def test_orders_are_pinned_so_that_printed_forms_stay_true_to_their_seed():
    # the order of what the programme sha256sum prints for '1/A/apron-off' and so on
    assert trial_forms(["apron-off", "hood-off", "hand-rub"], 1) == {
        "A": ("hood-off", "hand-rub", "apron-off"),
        "B": ("apron-off", "hood-off", "hand-rub"),
    }


def test_a_picture_that_is_taken_out_leaves_the_order_of_the_others():
    whole, fewer = trial_forms(NAMES, 3), trial_forms(NAMES[1:], 3)
    for form in FORMS:
        assert [name for name in whole[form] if name != NAMES[0]] == list(fewer[form])


def test_the_order_is_not_that_of_the_alphabet():
    for form in trial_forms(NAMES, 1).values():
        assert list(form) != sorted(form)


def test_the_empty_table_has_a_row_for_each_form_rater_and_picture():
    forms = trial_forms(NAMES[:3], 1)
    rows = list(csv.DictReader(io.StringIO(empty_table(forms), newline="")))
    assert list(rows[0]) == list(COLUMNS)
    assert len(rows) == 2 * 2 * 3
    for row in rows:
        assert forms[row["form"]][int(row["number"]) - 1] == row["picture"]
        assert row["rater"] in {"1", "2"}
        assert row["reader"] == row["category"] == ""


@pytest.mark.parametrize("pictures", [[], ["apron-off"]])
def test_few_pictures_make_no_trouble(pictures):
    assert [list(form) for form in trial_forms(pictures, 1).values()] == [pictures, pictures]
