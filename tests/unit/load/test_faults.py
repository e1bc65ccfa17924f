import re
from pathlib import Path

from signage.ground.rule import Rule
from signage.load import faults


def test_codes_are_counted_without_gaps_and_names_differ():
    assert [rule.code for rule in faults.RULES] == [
        f"LD-{number}" for number in range(1, len(faults.RULES) + 1)
    ]
    assert len({rule.name for rule in faults.RULES}) == len(faults.RULES)


def test_every_fault_of_the_module_is_explained():
    declared = {value for value in vars(faults).values() if isinstance(value, Rule)}
    assert declared == set(faults.RULES)
    for rule in faults.RULES:
        assert all((rule.what, rule.why, rule.example, rule.cure)), rule.code
        assert rule.what.endswith(".")
        assert rule.cure.endswith(".")


def test_every_fault_is_announced_by_a_test_of_this_folder():
    texts = [path.read_text(encoding="utf-8") for path in Path(__file__).parent.rglob("test_*.py")]
    announced = set(re.findall(r"LD-\d+", "\n".join(texts)))
    assert {rule.code for rule in faults.RULES} <= announced
