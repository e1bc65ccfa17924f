from datetime import date

import demo
import pytest
from register_samples import DAY

from signage.control.incidents import INCIDENT_COLUMNS, read_incidents
from signage.ground.errors import UnreadableInputError
from signage.ground.problem import with_problems
from signage.model.copies import Copy, states_of
from signage.model.copy_number import copy_number
from signage.trials.ward_table import read_ward_table, typed

NUMBER = copy_number("LB", 1) or ""
STATES = states_of([Copy(NUMBER, "poster rub", "clean-hands", "ar", "A-B", "h", "none", DAY, "icn")], [])


def _read(**values):
    row = {"number": NUMBER, "day": "2026-11-26", "step": "1", "part": "unsure", **values}
    return with_problems(read_incidents([typed(**row)], demo.project().library, STATES, date(2026, 12, 1)))


def test_a_slip_names_the_step_and_whether_the_sheet_was_part_of_the_cause():
    first = demo.project().library.protocols["clean-hands"].phases[0].steps[0].id
    (slip,), problems = _read(step=first, mend="Say it larger.", fixed="6TJ8-ZVC6")
    assert problems == ()
    assert slip.as_json() == {
        "day": "2026-11-26", "number": NUMBER, "protocol": "clean-hands", "step": first, "language": "ar",
        "part": "unsure", "mend": "Say it larger.", "fixed": "6TJ8-ZVC6",
    }  # fmt: skip


def test_what_does_not_fit_the_copy_is_told():
    for values, words in (
        ({"step": "1"}, "More than one sheet of P3 has a step 1"),
        ({"step": "no-such-step"}, "P3 has no step 'no-such-step'"),
        ({"part": "maybe"}, "The part 'maybe' is unknown"),
        ({"language": "fr"}, "is in ar, not in 'fr'"),
        ({"number": "LB-0002-9"}, "check character does not agree"),
    ):
        _, problems = _read(**values)
        assert any(words in problem.message for problem in problems), words


def test_columns_for_names_and_health_data_do_not_exist_and_are_refused(tmp_path):
    """What counts as health data: GDPR, article 4 (15); the words of the columns are common practice."""
    path = tmp_path / "slips.csv"
    for column in (
        "name", "Patient", "staff name", "injured_person", "Date of birth", "e-mail", "phone", "diagnosis",
        "Symptoms", "temperature", "blood type", "vaccination", "health", "medical record",
    ):  # fmt: skip
        path.write_text(f"day,number,step,part,{column}\n2026-11-26,{NUMBER},1,no,x\n")
        with pytest.raises(UnreadableInputError) as caught:
            read_ward_table(path, INCIDENT_COLUMNS)
        assert [problem.code for problem in caught.value.problems] == ["RG-11"], column
        assert "x" not in caught.value.problems[0].message.split(column)[-1]
