"""A printer that cannot print as far out as sheets reach."""

from collections.abc import Iterator

from signage.check.content_rule import ContentRule, ContentSubject
from signage.ground.problem import Problem
from signage.ground.rule import S2, Rule

LEAST_MARGIN = 5.0
"""Millimetres: the pocket checklist, whose edge is the narrowest of all sheets on a whole paper."""

WIDE_PRINTER_MARGIN = Rule(
    code="CN-7",
    name="wide-printer-margin",
    severity=S2,
    what=f"The margins of printers: sheets reach up to {LEAST_MARGIN:g} mm from the edge of the paper.",
    why="What lies in the margin is cut off, or the printer shrinks the page, and no size is true any more.",
    example="margin: 20 mm",
    cure="Measure the blank edge on a printed page; if it is right, name another printer.",
)


def find(subject: ContentSubject) -> Iterator[Problem]:
    """One problem for each printer whose margin is wider than that of the sheets."""
    for ward in subject.library.wards.values():
        for printer in ward.printers:
            if printer.margin > LEAST_MARGIN:
                yield subject.problem(
                    WIDE_PRINTER_MARGIN,
                    f"The printer '{printer.id}' leaves {printer.margin:g} mm blank at the edge; sheets "
                    f"reach up to {LEAST_MARGIN:g} mm from it.",
                    printer.at("margin"),
                )


RULE = ContentRule(WIDE_PRINTER_MARGIN, find)
