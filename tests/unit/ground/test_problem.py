from signage.ground.problem import Problem, Severity, read_each, with_problems


def problem(message):
    return Problem("XX-1", "loose-lid", Severity.S2, message)


def reading(value, *messages):
    for message in messages:
        yield problem(message)
    return value


def test_a_reading_gives_its_value_after_all_problems_met_on_the_way():
    both = read_each([reading(1, "one", "two"), reading(None), reading(3, "three")])
    assert with_problems(both) == ((1, None, 3), (problem("one"), problem("two"), problem("three")))
