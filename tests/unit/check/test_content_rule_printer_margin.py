from dataclasses import replace

import demo
from content_samples import found, subject, ward, with_ward

from signage.check.content_rules.printer_margin import LEAST_MARGIN, RULE


def with_margin(margin):
    printer = replace(ward().printers[0], margin=margin)
    return printer, subject(with_ward(replace(ward(), printers=(printer,))))


def test_a_margin_wider_than_that_of_the_sheets():
    assert found(RULE, with_margin(5.0)[1]) == []
    printer, looked_at = with_margin(20.0)
    (problem,) = found(RULE, looked_at)
    assert "leaves 20 mm blank at the edge; sheets reach up to 5 mm" in problem.message
    assert problem.place == printer.at("margin")


def test_no_sheet_reaches_farther_out_than_the_rule_says():
    sheets = (
        demo.sheet("pocket-checklist", paper="A4"),
        demo.sheet("step-cards", paper="A4"),
        demo.sheet("poster", phase="take-off", paper="A4"),
    )
    assert min(page.margin for sheet in sheets for page in sheet.pages) == LEAST_MARGIN
