"""The sheets about pictures of the demo, composed once."""

import demo

from signage.check.rule import SheetSubject
from signage.drawing.marks import groups_of, texts_of
from signage.drawing.roles import GroupRole
from signage.produce.requests import SheetRequest

ISOLATES = dict.fromkeys(map(ord, "\u2066\u2067\u2068\u2069"))
PROTOCOL = "layered-protection"


def picture_sheet(kind, tag="en", protocol=PROTOCOL, paper="A4", tone="colour", seed=1):
    return demo.composed(SheetRequest(protocol, tag, kind, "", paper, tone, seed))


def words_of(page, *roles):
    """The texts of a page without isolates, of some roles or of all."""
    return [
        mark.text.translate(ISOLATES).replace("\u00a0", " ")
        for mark, _ in texts_of(page)
        if not roles or mark.role in roles
    ]


def names_on(page, role=GroupRole.PICTURE):
    return [group.name for group, _ in groups_of(page, role)]


def problems_of(sheet, *rules):
    """The findings of sheet rules that hold for every kind of sheet."""
    context = demo.project().picture_context(sheet.protocol, sheet.locale)
    subject = SheetSubject(sheet, context, demo.project().kinds.of(sheet.kind))
    return [problem.message for rule in rules for problem in rule.find(subject)]
