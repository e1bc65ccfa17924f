"""All rules by their code."""

from __future__ import annotations

import pkgutil
from functools import lru_cache
from importlib import import_module

from signage.check import sheet_rules
from signage.check.rule import Explanation, SheetRule
from signage.words import coverage


@lru_cache(maxsize=1)
def all_sheet_rules() -> tuple[SheetRule, ...]:
    """The rules over composed sheets, by code."""
    found: list[SheetRule] = []
    for module in pkgutil.iter_modules(sheet_rules.__path__):
        rule = import_module(f"{sheet_rules.__name__}.{module.name}").RULE
        assert isinstance(rule, SheetRule)
        found.append(rule)
    return tuple(sorted(found, key=lambda rule: int(rule.explanation.code.split("-")[1])))


@lru_cache(maxsize=1)
def explanations() -> dict[str, Explanation]:
    """What ``signage explain`` knows, by code."""
    known = [rule.explanation for rule in all_sheet_rules()]
    known += [
        Explanation(rule.code, rule.name, rule.severity, rule.what, rule.why, rule.example, rule.cure)
        for rule in coverage.RULES
    ]
    return {explanation.code: explanation for explanation in known}
