"""People get as many lines as there are things to mend."""

from dataclasses import replace

from signage.check.grouping import FEWEST_TO_COUNT, MOST_OF_A_CODE, MOST_OF_A_FILE, group_problems
from signage.ground.place import Place
from signage.ground.problem import Problem, Severity


def problem(code="LD-4", message="m", path="a.yaml", line=1, **more):
    return Problem(code, "name", Severity.S1, message, "cure", Place(path, line), **more)


def told(problems):
    return [(each.number, each.sentence, each.sheets) for each in group_problems(problems).findings]


def test_one_text_on_many_sheets_is_one_finding_that_lists_them():
    long = [
        problem(
            "SH-1",
            f"The headline 'X' is {size} mm too large.",
            sheet=f"s{size}",
            text="p/x/text",
            locale="fr",
        )
        for size in (3.2, 4.0, 11.5)
    ]
    other = replace(long[0], text="p/y/text", message="The headline 'Y' is 1 mm too large.")
    arabic = replace(long[0], locale="ar")
    uneven = [problem("SH-9", f"note on page {n} ends alone", sheet=f"s{n}", step="x") for n in (1, 2)]
    assert told([*long, other, arabic, *uneven]) == [
        (3, long[0].message, ("s3.2", "s4.0", "s11.5")),
        (1, other.message, ("s3.2",)),
        (1, arabic.message, ("s3.2",)),
        (2, uneven[0].message, ("s1", "s2")),
    ]


def test_gaps_of_a_language_are_one_line_from_three_on():
    def gaps(locale, number):
        return [problem("WD-1", f"t{n}: none", f"{locale}.po", n + 1, locale=locale) for n in range(number)]

    assert told([*gaps("pt", 218), *gaps("fr", FEWEST_TO_COUNT - 1)]) == [
        (218, "218 texts are missing in pt, first: t0: none", ()),
        (1, "t0: none", ()),
        (1, "t1: none", ()),
    ]


def test_a_language_without_a_font_is_one_sentence():
    lacking = [
        problem(
            "SH-2",
            f"No font has '{chr(point)}' (U+{point:04X}) in the title {title}.",
            sheet=sheet,
            locale=tag,
        )
        for tag, first in (("bo", 0xF40), ("nqo", 0x7CA))
        for point in range(first, first + 20)
        for title in ("'a'", "'b'")
        for sheet in ("s1", "s2", "s3")
    ]
    assert [sentence.split(", first:")[0] for _, sentence, _ in told(lacking)] == [
        "No font has 20 characters of bo, in 40 places",
        "No font has 20 characters of nqo, in 40 places",
    ]


def test_a_file_is_told_up_to_a_hundred_findings_and_the_rest_is_counted():
    one_code = [problem(message=f"key {n}", line=n) for n in range(1, 1001)]
    many_codes = [problem(f"LD-{n % 50}", f"key {n}", "b.yaml", n + 1) for n in range(1000)]
    other = problem(path="c.yaml")
    grouped = group_problems([*one_code, *many_codes, other])
    assert len(grouped.findings) == MOST_OF_A_CODE + MOST_OF_A_FILE + 1
    assert grouped.findings[-1].first is other
    assert grouped.left_out["a.yaml"] == {"LD-4": 1000 - MOST_OF_A_CODE}
    assert sum(grouped.left_out["b.yaml"].values()) == 1000 - MOST_OF_A_FILE


def test_different_faults_at_one_place_stay_apart():
    twins = [problem(message="one"), problem(message="two"), problem("LD-5", "one")]
    assert [sentence for _, sentence, _ in told(twins)] == ["one", "two", "one"]
