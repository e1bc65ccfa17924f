"""The fixed words of the sheets and pages, by id; their source language is always English."""

from __future__ import annotations

from signage.model.library import Protocol
from signage.words.fixed.form_texts import FORM_TEXTS
from signage.words.fixed.page_texts import PAGE_TEXTS
from signage.words.fixed.sign_off_texts import SIGN_OFF_TEXTS
from signage.words.fixed.text import FixedText
from signage.words.fixed.trial_texts import TRIAL_TEXTS

__all__ = ["FIXED_TEXTS", "FixedText"]

_TEXTS = (
    FixedText("draft", "DRAFT", "Mark in a small frame on every sheet that is not approved.", 10),
    FixedText("draft-sentence", "Draft. Not for clinical use.", "Printed along all four edges.", 40),
    FixedText(
        "proof",
        "PROOF",
        "Mark in a small frame on a print for proofreading that is known to have faults.",
        10,
    ),
    FixedText(
        "proof-sentence",
        "Proof. Has faults. Not to be posted.",
        "Printed along all four edges of a print for proofreading.",
        44,
    ),
    FixedText("critical", "Critical", "Mark on a step where a mistake can hurt.", 16),
    FixedText("stop", "Stop", "Key word of the rule box on taking-off sheets.", 9),
    FixedText("caution", "Caution", "Key word of the rule box; label on step cards.", 10),
    FixedText("why", "Why", "Label on step cards, before the reason.", 10),
    FixedText("bin", "bin", "A waste bin, under its letter.", 10),
    FixedText("tub", "tub", "A tub with a lid for things that are used again, under its letter.", 10),
    FixedText("if-soiled", "Only if soiled", "Above the headline of a step that is done only then.", 24),
    FixedText("if-torn", "Only if torn", "Above the headline of a step that is done only then.", 24),
    FixedText(
        "movements-together",
        "All movements together: {time}",
        "On cards of hand hygiene; the time that all its movements share.",
        44,
    ),
    FixedText(
        "cautions-elsewhere",
        "Cautions: see poster and step cards.",
        "On the cover of pocket checklists, which leave cautions out.",
        64,
    ),
    FixedText("rub-outer-gloves", "Rub outer gloves", "Short name of a hand-hygiene step.", 30),
    FixedText("rub-inner-gloves", "Rub inner gloves", "Short name of a hand-hygiene step.", 30),
    FixedText("rub-bare-hands", "Rub both hands", "Short name of a hand-hygiene step, skin.", 30),
    FixedText("continued", "{zone}, continued", "Head of a zone that began on an earlier row or sheet.", 36),
    FixedText("every-rub", "Every rub: {time}.", "Note that stands for the time on each rub.", 30),
    FixedText("rub-for", "Rub for {time}", "Head over the rubbing movements.", 24),
    FixedText(
        "wash-for",
        "Wash for {time}",
        "Head over the movements of washing; the time of the whole.",
        24,
    ),
    FixedText("owner", "Owner: {role}", "Control text; the role that answers for the sheet.", 44),
    FixedText("review-by", "Review by {date}", "Control text.", 34),
    FixedText("revision", "Revision {code}", "Control text; the code stays as it is.", 28),
    FixedText("page-of", "Page {page} of {pages}", "Control text.", 24),
    FixedText("card-of", "Card {card} of {cards}", "Control text on step cards.", 24),
    FixedText(
        "sheet-of",
        "Sheet {page} of {pages}",
        "In the title band of a poster that needs several sheets.",
        24,
    ),
    FixedText(
        "ruler",
        "{length}. If this line is not {length} long, do not use the print.",
        "Beside a ruler that proves the print is at full size.",
        70,
    ),
    FixedText(
        "local-policy",
        "Local policy decides. If this sheet and local policy differ, stop and ask.",
        "Caution on every sheet.",
        80,
    ),
    FixedText(
        "memory-aid",
        "Memory aid only. Does not replace training or an observer.",
        "Caution on pocket checklists.",
        64,
    ),
    FixedText("training-page", "Training page", "Under the QR code.", 24),
    FixedText("notes", "Notes", "Head of empty lines for the reader's own notes.", 14),
    FixedText(
        "where-it-goes", "What goes where", "Head of the list of bins and tubs and what each takes.", 26
    ),
    FixedText(
        "container-takes",
        "{container} takes: {items}",
        "In that list, for a bin or tub that has a name and no letter.",
        44,
    ),
    FixedText("list-joiner", ", ", "Between the items of a list of things that go into one bin.", 4),
    FixedText(
        "translation-unverified",
        "Translation not verified.",
        "Beside the draft mark on a translated sheet.",
        40,
    ),
)

_POINTER_TEXTS = (
    FixedText(
        "local-documents",
        "Local documents tell what to do",
        "Head of a list of events and documents, such as: Fire alarm: fire plan.",
        34,
    ),
)

_OF_SHEETS = (*_TEXTS, *_POINTER_TEXTS, *SIGN_OFF_TEXTS)

FIXED_TEXTS = {text.id: text for text in (*_OF_SHEETS, *PAGE_TEXTS, *TRIAL_TEXTS, *FORM_TEXTS)}
"""Every fixed text by its id; its message context is ``interface/<id>``."""

_SHEET_CONTEXTS = frozenset(f"interface/{text.id}" for text in _TEXTS)
_POINTER_CONTEXTS = frozenset(f"interface/{text.id}" for text in _POINTER_TEXTS)


def sheet_contexts(protocol: Protocol) -> frozenset[str]:
    """Contexts of the fixed words that sheets of a protocol carry.

    Those about local documents are among them only where it points to one: others do not become doubtful
    by them.
    """
    return _SHEET_CONTEXTS | _POINTER_CONTEXTS if protocol.pointers else _SHEET_CONTEXTS


SIGN_OFF_CONTEXTS = frozenset(f"interface/{text.id}" for text in SIGN_OFF_TEXTS)
"""Contexts of the fixed words that only sheets of a signed protocol carry."""

WARNING_CONTEXTS = frozenset(
    f"interface/{name}"
    for name in (
        "draft-sentence",
        "proof-sentence",
        "demonstration-sentence",
        "ruler",
        "local-policy",
        "memory-aid",
        "translation-unverified",
        "page-withdrawn",
        "page-is-replaced",
        "page-is-withdrawn",
        "page-replaced-since",
        "page-copy-gone",
        "form-no-names",
        "page-cannot-tell",
        "page-unsafe",
    )
)
"""Contexts of the fixed words that warn or forbid: a lost "not" turns them round."""

OTHER_CONTEXTS = frozenset(f"interface/{text.id}" for text in (*TRIAL_TEXTS, *FORM_TEXTS))
"""Contexts of the fixed words of sheets about pictures and of forms, which nothing about a protocol shows."""
