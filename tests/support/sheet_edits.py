"""Changed copies of composed sheets, for rules that must notice."""

from dataclasses import replace

from signage.check.rule import SheetSubject
from signage.compose.sheet_kinds import read_sheet_kinds
from signage.drawing.marks import Group

KINDS = read_sheet_kinds()


def edited(sheet, change):
    """The sheet with ``change(mark)`` in place of every mark; None removes it."""
    return replace(sheet, pages=tuple(replace(p, marks=_edit(p.marks, change)) for p in sheet.pages))


def _edit(marks, change):
    kept = []
    for mark in marks:
        new = change(mark)
        if new is None:
            continue
        kept.append(replace(new, marks=_edit(new.marks, change)) if isinstance(new, Group) else new)
    return tuple(kept)


def found(rule, sheet, context):
    return list(rule.find(SheetSubject(sheet, context, KINDS.of(sheet.kind))))
