"""All rules by their code."""

from __future__ import annotations

import pkgutil
from functools import lru_cache
from importlib import import_module
from typing import Protocol

from signage.check import content_rules, picture_rules, refused_sheet, sheet_rules
from signage.check.content_rule import ContentRule
from signage.check.picture_rule import PictureRule
from signage.check.rule import Explanation, SheetRule
from signage.ground.problem import Severity
from signage.load import faults
from signage.pages import rules as page_rules
from signage.pictograms import faults as scene_faults
from signage.rehearse.rules import table as rehearsal_rules
from signage.words import coverage


@lru_cache(maxsize=1)
def all_sheet_rules() -> tuple[SheetRule, ...]:
    """The rules over composed sheets, by code."""
    found: list[SheetRule] = []
    for module in pkgutil.iter_modules(sheet_rules.__path__):
        rule = import_module(f"{sheet_rules.__name__}.{module.name}").RULE
        assert isinstance(rule, SheetRule)
        found.append(rule)
    return tuple(sorted(found, key=lambda rule: _number(rule.explanation)))


@lru_cache(maxsize=1)
def all_picture_rules() -> tuple[PictureRule, ...]:
    """The rules over pictures, by code."""
    found: list[PictureRule] = []
    for module in pkgutil.iter_modules(picture_rules.__path__):
        rule = import_module(f"{picture_rules.__name__}.{module.name}").RULE
        assert isinstance(rule, PictureRule)
        found.append(rule)
    return tuple(sorted(found, key=lambda rule: _number(rule.explanation)))


@lru_cache(maxsize=1)
def all_content_rules() -> tuple[ContentRule, ...]:
    """The rules over the content as a whole, by code."""
    found: list[ContentRule] = []
    for module in pkgutil.iter_modules(content_rules.__path__):
        rule = import_module(f"{content_rules.__name__}.{module.name}").RULE
        assert isinstance(rule, ContentRule)
        found.append(rule)
    return tuple(sorted(found, key=lambda rule: _number(rule.explanation)))


def _number(explanation: Explanation) -> int:
    return int(explanation.code.split("-")[1])


@lru_cache(maxsize=1)
def explanations() -> dict[str, Explanation]:
    """What ``signage explain`` knows, by code."""
    known = [explanation_of(rule) for rule in faults.RULES]
    known += [explanation_of(rule) for rule in coverage.RULES]
    known += [explanation_of(rule) for rule in rehearsal_rules.RULES]
    known += [explanation_of(rule) for rule in scene_faults.RULES]
    known += [explanation_of(rule) for rule in page_rules.RULES]
    known += [rule.explanation for rule in all_content_rules()]
    known += [rule.explanation for rule in all_picture_rules()]
    known += [refused_sheet.EXPLANATION, *(rule.explanation for rule in all_sheet_rules())]
    return {explanation.code: explanation for explanation in known}


class _Explained(Protocol):
    """What the rules of lower rooms have in common."""

    @property
    def code(self) -> str: ...
    @property
    def name(self) -> str: ...
    @property
    def severity(self) -> Severity: ...
    @property
    def what(self) -> str: ...
    @property
    def why(self) -> str: ...
    @property
    def example(self) -> str: ...
    @property
    def cure(self) -> str: ...


def explanation_of(rule: _Explained) -> Explanation:
    """What a rule of another room says of itself."""
    return Explanation(rule.code, rule.name, rule.severity, rule.what, rule.why, rule.example, rule.cure)
