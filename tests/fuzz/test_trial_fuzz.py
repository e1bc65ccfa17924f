"""Whatever is in a table of ratings, it is read, or refused with reasons; nothing else comes out."""

import csv
import io

from hypothesis import given, settings
from hypothesis import strategies as st

from signage.ground.errors import UnreadableInputError
from signage.model.picture_trial import COLUMNS, Category
from signage.trials.reading import read_trial
from signage.trials.result import judge

PICTURES = ("apron-off", "hood-off")

fields = st.one_of(
    st.sampled_from(["A", "B", "1", "2", "R1", "R2", "agreed", "", *PICTURES, *Category]), st.text(max_size=8)
)
tables = st.lists(st.lists(fields, max_size=7), max_size=12)


def outcome(path):
    problems, trial = (), None
    try:
        trial = read_trial(path, PICTURES)
    except UnreadableInputError as refused:
        problems = refused.problems
    assert (trial is None) == bool(problems)
    assert all(problem.message and problem.hint for problem in problems)
    if trial is None:
        return
    result = judge(trial, PICTURES)
    assert sum(picture.answers for picture in result.pictures) == len(trial.answers) > 0


@settings(max_examples=150)
@given(st.binary(max_size=300))
def test_any_bytes(tmp_path_factory, data):
    path = tmp_path_factory.mktemp("bytes") / "table.csv"
    path.write_bytes(data)
    outcome(path)


@settings(max_examples=200)
@given(tables, st.sampled_from(",;\t"))
def test_any_fields_under_the_right_columns(tmp_path_factory, rows, separator):
    stream = io.StringIO()
    csv.writer(stream, delimiter=separator).writerows([COLUMNS, *rows])
    path = tmp_path_factory.mktemp("rows") / "table.csv"
    path.write_bytes(stream.getvalue().encode("utf-8", "surrogatepass"))
    outcome(path)
