from outside_readers import outside

from signage.cli.terminal_code import code_lines, print_code

ADDRESS = "http://192.168.7.20:8080/"


def test_the_code_on_the_terminal_can_be_scanned():
    from PIL import Image

    reader = outside("zxingcpp")
    lines = code_lines(ADDRESS)
    picture = Image.new("L", (len(lines[0]), 2 * len(lines)), 255)
    for row, line in enumerate(lines):
        for column, sign in enumerate(line):
            for half, dark in enumerate(("▀█", "▄█")):
                if sign in dark:
                    picture.putpixel((column, 2 * row + half), 0)
    (code,) = reader.read_barcodes(picture.resize((picture.width * 6, picture.height * 6)))
    assert code.text == ADDRESS


def test_all_lines_are_as_long_and_the_edges_are_quiet():
    lines = code_lines(ADDRESS)
    assert len({len(line) for line in lines}) == 1
    assert lines[0].strip() == lines[-1].strip() == ""


def test_a_file_instead_of_a_terminal_gets_no_code(capsys):
    print_code(ADDRESS)
    assert capsys.readouterr().out == ""
