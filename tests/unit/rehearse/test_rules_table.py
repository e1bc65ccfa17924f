"""The table of rules is whole: every code of the design, its severity, and words that explain it."""

import pytest

from signage.ground.problem import Severity
from signage.rehearse.rules.table import RULE_OF, RULES

SEVERITIES = {
    "S1": "LY-0 LY-1 LY-2 LY-3 LY-4 LY-7 LY-9 HH-1 HH-3 HH-5 HH-6 CT-1 CT-2 CT-3 CT-8 RP-1 RP-2 BN-1 BN-2 "
    "ZN-1 ZN-2 ZN-4 ZN-6 ZN-7 RO-1 RO-3 FX-1 FX-2 EN-1 EN-2 EN-3 EN-4 EN-7 EN-9 ST-1 ST-2",
    "S2": "LY-A LY-5 LY-6 LY-8 LY-10 HH-2 HH-4 HH-8 HH-9 CT-4 CT-5 CT-6 RP-3 BN-3 BN-4 ZN-3 ZN-5 RO-2 FX-3 "
    "FX-4 FX-5 FX-6 FX-7 EN-5 EN-6 EN-10 EN-11 RO-4 OR-1 ST-3 ST-4 ST-5 WV-1 WV-2",
    "S3": "HH-7 HH-10 CT-7 BN-5 EN-8 WV-3",
}


def test_every_code_has_its_severity():
    expected = {code: Severity(severity) for severity, codes in SEVERITIES.items() for code in codes.split()}
    assert {code: rule.severity for code, rule in RULE_OF.items()} == expected


def test_codes_and_names_are_unique():
    assert len({rule.code for rule in RULES}) == len({rule.name for rule in RULES}) == len(RULES)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_every_rule_explains_itself(rule):
    for words in (rule.what, rule.why, rule.cure):
        assert words.endswith(".")
        assert words[0].isupper() or words[0] == "'"
    assert rule.example
    assert " " not in rule.name
