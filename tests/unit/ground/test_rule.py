from signage.ground.place import NOWHERE, Place
from signage.ground.rule import S2, S3, Rule

RULE = Rule("XX-1", "loose-lid", S2, "Every lid.", "It falls.", "a lid", "Fasten it.")


def test_a_problem_carries_what_its_rule_says_and_where_it_was_found():
    place = Place("a.yaml", 3, 5)
    about = {"protocol": "p", "step": "s", "locale": "fr", "sheet": "q", "text": "t"}
    problem = RULE.problem("The lid is loose.", place, **about)
    assert (problem.code, problem.name, problem.severity, problem.hint) == (
        "XX-1", "loose-lid", S2, "Fasten it.",
    )  # fmt: skip
    assert (problem.message, problem.place) == ("The lid is loose.", place)
    assert {name: getattr(problem, name) for name in about} == about


def test_one_finding_may_be_milder_and_say_more_exactly_what_to_do():
    problem = RULE.problem("The lid rattles.", hint="Turn it once.", severity=S3)
    assert (problem.severity, problem.hint, problem.place) == (S3, "Turn it once.", NOWHERE)
