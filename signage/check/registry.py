"""All rules by their code: the tables of every room, and the folders of rules in this one."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterable, Mapping
from functools import lru_cache
from importlib import import_module
from types import MappingProxyType, ModuleType
from typing import TypeVar

from signage.check import content_rules, picture_rules, sheet_rules
from signage.check.content_rule import ContentRule
from signage.check.picture_rule import PictureRule
from signage.check.rule import SHEET_REFUSED, SheetRule
from signage.ground.rule import Rule
from signage.load import faults
from signage.pages import rules as page_rules
from signage.pictograms import faults as scene_faults
from signage.rehearse.rules import table as rehearsal_rules
from signage.text import faults as font_faults
from signage.trials import faults as trial_faults
from signage.trials import ward_faults
from signage.words import rules as word_rules

_OF_OTHER_ROOMS = (
    *faults.RULES,
    *word_rules.RULES,
    *rehearsal_rules.RULES,
    *scene_faults.RULES,
    *font_faults.RULES,
    *page_rules.RULES,
)

Looking = TypeVar("Looking", SheetRule, PictureRule, ContentRule)


@lru_cache(maxsize=1)
def all_sheet_rules() -> tuple[SheetRule, ...]:
    """The rules over composed sheets, by code."""
    return _rules_in(sheet_rules, SheetRule)


@lru_cache(maxsize=1)
def all_picture_rules() -> tuple[PictureRule, ...]:
    """The rules over pictures, by code."""
    return _rules_in(picture_rules, PictureRule)


@lru_cache(maxsize=1)
def all_content_rules() -> tuple[ContentRule, ...]:
    """The rules over the content as a whole, by code."""
    return _rules_in(content_rules, ContentRule)


@lru_cache(maxsize=1)
def all_rules() -> Mapping[str, Rule]:
    """Every rule of every room by its code, in the order in which a library meets them.

    Raises ValueError where two rules have one code.
    """
    return _by_code(
        (
            *_OF_OTHER_ROOMS,
            *(each.rule for each in all_content_rules()),
            *(each.rule for each in all_picture_rules()),
            SHEET_REFUSED,
            *(each.rule for each in all_sheet_rules()),
            *trial_faults.RULES,
            *ward_faults.RULES,
        )
    )


def rule_of(code: str) -> Rule | None:
    """The rule with a code; what only other rules need is not read."""
    tables = (*_OF_OTHER_ROOMS, *trial_faults.RULES, *ward_faults.RULES, SHEET_REFUSED)
    found = next((rule for rule in tables if rule.code == code), None)
    return found or all_rules().get(code)


def _rules_in(folder: ModuleType, kind: type[Looking]) -> tuple[Looking, ...]:
    """The rule of each module of a folder, by the number of its code."""
    found: list[Looking] = []
    for module in pkgutil.iter_modules(folder.__path__):
        rule = import_module(f"{folder.__name__}.{module.name}").RULE
        assert isinstance(rule, kind)
        found.append(rule)
    return tuple(sorted(found, key=lambda each: int(each.rule.code.split("-")[1])))


def _by_code(rules: Iterable[Rule]) -> Mapping[str, Rule]:
    found: dict[str, Rule] = {}
    for rule in rules:
        if rule.code in found:
            raise ValueError(f"{rule.code} is the code of {found[rule.code].name} and of {rule.name}")
        found[rule.code] = rule
    return MappingProxyType(found)
