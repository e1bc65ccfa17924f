import pytest

from signage.ground.errors import UnreadableInputError
from signage.load.table_file import LARGEST_TABLE, read_table
from signage.trials.faults import TABLE


@pytest.fixture
def table(tmp_path):
    def write(data):
        path = tmp_path / "ratings.csv"
        path.write_bytes(data if isinstance(data, bytes) else data.encode())
        return path

    return write


def problem_of(path):
    with pytest.raises(UnreadableInputError) as caught:
        read_table(path, TABLE)
    (problem,) = caught.value.problems
    assert problem.code == "TR-1"
    assert problem.hint
    return problem


@pytest.mark.parametrize("separator", [",", ";", "\t"])
@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_the_habits_of_office_programmes_make_no_difference(table, separator, line_end, mark):
    lines = [["form", "reader"], ["A", " R7 "], ["", ""], ["B", '"R;8, x"']]
    text = mark + line_end.join(separator.join(fields) for fields in lines) + line_end
    rows = read_table(table(text), TABLE)
    assert [row.fields for row in rows] == [("form", "reader"), ("A", "R7"), ("B", "R;8, x")]
    assert [row.place.line for row in rows] == [1, 2, 4]


def test_a_field_of_several_lines_keeps_the_count_of_lines(table):
    rows = read_table(table('a,note\n1,"two\nlines"\n2,x\n'), TABLE)
    assert [row.place.line for row in rows] == [1, 2, 4]


def test_a_missing_file_and_a_folder_are_named(tmp_path):
    assert "is missing" in problem_of(tmp_path / "none.csv").message
    assert "is a folder" in problem_of(tmp_path).message


@pytest.mark.parametrize(
    ("data", "words", "line"),
    [
        (b"form,reader\nA,Andr\xe9\n", "0xE9 belongs to no character", 2),
        ("form,reader\n".encode("utf-16"), "UTF-16", 0),
        (b"form,reader\nA,R\x007\n", "control character U+0000", 2),
        ("form,reader\nA,\u202eR7\n", "direction override U+202E", 2),
        (b"", "is empty", 0),
        (b"\n \n", "is empty", 0),
        (b";;\n", "is empty", 0),
        (b'form,reader\nA,"R7\n', "no CSV", 2),
        (b"a,b\n1," + b"x" * 3000, "longer than 2000 characters", 2),
        (b"a" * (LARGEST_TABLE + 1), "larger than 2 MB", 0),
    ],
)
def test_what_cannot_be_read_is_told_with_its_line(table, data, words, line):
    problem = problem_of(table(data))
    assert words in problem.message
    assert problem.place.line == line


def test_each_field_of_a_row_on_one_line_knows_its_column(table):
    row = read_table(table('a;b;c\nx; "y;z";q\n'), TABLE)[1]
    assert [str(row.at(index)).split("ratings.csv:")[1] for index in range(3)] == ["2:1", "2:3", "2:10"]
