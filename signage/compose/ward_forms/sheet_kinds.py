"""Forms of the ward: made by the commands of document control, never by 'draw'."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from signage.compose.paper_choice import PaperChoice
from signage.compose.sheet_kind import Offer, Owed, Per, SheetKind, SheetOrder

if TYPE_CHECKING:
    from signage.compose.ward_forms.context import FormContext
    from signage.drawing.marks import Sheet

_STANDING = PaperChoice(names=("A4", "Letter"), made_on="made on A4 or Letter", usual="A4")
_LYING = PaperChoice(
    names=("A4-landscape", "Letter-landscape"),
    made_on="made on A4 or Letter, landscape",
    usual="A4-landscape",
)


def _compose_recall(order: SheetOrder[FormContext]) -> Sheet:
    from signage.compose.ward_forms.lists import compose_recall  # noqa: PLC0415 - help reads kinds without their composers

    return compose_recall(order.context, order.paper)


def _compose_audit(order: SheetOrder[FormContext]) -> Sheet:
    from signage.compose.ward_forms.lists import compose_audit  # noqa: PLC0415 - help reads kinds without their composers

    return compose_audit(order.context, order.paper)


def _compose_notice(order: SheetOrder[FormContext]) -> Sheet:
    from signage.compose.ward_forms.single import compose_notice  # noqa: PLC0415 - help reads kinds without their composers

    return compose_notice(order.context, order.paper)


def _compose_incident(order: SheetOrder[FormContext]) -> Sheet:
    from signage.compose.ward_forms.single import compose_incident  # noqa: PLC0415 - help reads kinds without their composers

    return compose_incident(order.context, order.paper)


RECALL_LIST = SheetKind(
    name="recall-list",
    singular="recall list",
    plural="recall lists",
    summary="the copies that must come down, in walking order, with a box each ('signage recall')",
    place=100,
    per=Per.WARD,
    papers=_STANDING,
    compose=_compose_recall,
    offer=Offer.OF_CONTROL,
    owes=Owed.RULER,
    control=frozenset(),
)

WITHDRAWN_NOTICE = replace(
    RECALL_LIST,
    name="withdrawn-notice",
    singular="notice of withdrawal",
    plural="notices of withdrawal",
    summary="hangs where a sheet was taken down and nothing takes its place ('signage recall')",
    place=101,
    per=Per.PROTOCOL,
    compose=_compose_notice,
)

AUDIT_FORM = replace(
    RECALL_LIST,
    name="audit-form",
    singular="audit form",
    plural="audit forms",
    summary="every mounted copy with boxes for what to look at ('signage audit round')",
    place=102,
    papers=_LYING,
    compose=_compose_audit,
)

INCIDENT_SLIP = replace(
    RECALL_LIST,
    name="incident-slip",
    singular="incident slip",
    plural="incident slips",
    summary="whether a sheet was part of the cause, without names or health data ('signage audit slip')",
    place=103,
    compose=_compose_incident,
)

SHEET_KINDS = (RECALL_LIST, WITHDRAWN_NOTICE, AUDIT_FORM, INCIDENT_SLIP)
