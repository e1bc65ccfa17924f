"""The fixed words of the sheets about pictures, by id: the sheet of all pictures, the comprehension trial."""

from __future__ import annotations

from signage.words.fixed.text import FixedText
from signage.words.fixed.text import fixed_text as _text

_GUIDE = 90
"""Characters of a rule for the person who runs a trial: one line and a half."""

_PICTURE_SHEET = (
    _text("pictures-title", "All pictures", "Title of the sheet that shows every picture.", 24),
    _text(
        "pictures-purpose",
        "To choose from and to proofread. Not for the wall.",
        "Below the title of the sheet of all pictures.",
        70,
    ),
    _text("pictures-colour", "Colour", "Head over the pictures in colour.", 14),
    _text("pictures-copier", "Photocopy", "Head over the pictures in black and white.", 14),
    _text("pictures-untranslated", "Not translated", "Mark before a sentence in the source language.", 22),
)

_FORM = (
    _text("trial-title", "What do the pictures say?", "Title of the form that readers fill in.", 30),
    _text("trial-form", "Form {form}", "Which of the two forms; the letter stays as it is.", 14, "form"),
    _text("trial-reader", "Reader number", "Label of a field on the form; never a name.", 18),
    _text("trial-date", "Date", "Label of a field on the form.", 12),
    _text(
        "trial-welcome",
        "We test the pictures, not you. Write what you think. If you do not know, leave the lines empty.",
        "To the reader, above the pictures.",
        110,
    ),
    _text("trial-doing", "What is the person doing?", "Question beside each picture, above two lines.", 32),
    _text("trial-thing", "What is this?", "Question beside a picture of a thing without a person.", 32),
    _text("trial-must", "What must you do?", "Second question beside each picture.", 32),
    _text(
        "trial-picture",
        "Picture {number}",
        "Stands for the picture where it is not seen, so that it gives no answer away.",
        20,
        "number",
    ),
)

_RUNNING = (
    _text("trial-guide-title", "For the person who runs the trial", "Title of the first page.", 40),
    _text(
        "trial-guide-readers",
        "Ask people who will follow these pictures and have not yet seen them with words.",
        "Rule for the person who runs the trial.",
        _GUIDE,
    ),
    _text(
        "trial-guide-forms",
        "Give each reader one form: form A to one half of the readers, form B to the other half.",
        "Rule; the two forms show the pictures in different orders.",
        _GUIDE,
    ),
    _text("trial-guide-number", "Give each reader a number. Write down no name.", "Rule.", _GUIDE),
    _text(
        "trial-guide-help",
        "Show no other sheet. Do not help, and do not say whether an answer is right.",
        "Rule.",
        _GUIDE,
    ),
    _text(
        "trial-guide-write",
        "If a reader prefers to speak, write down the answer word for word.",
        "Rule.",
        _GUIDE,
    ),
    _text(
        "trial-guide-rate",
        "Afterwards two assessors rate every answer with the key, each without the other.",
        "Rule.",
        _GUIDE,
    ),
    _text(
        "trial-guide-type",
        "Type the ratings into this table: one row for each picture, reader and assessor.",
        "Rule; the name of a file follows on the next line.",
        _GUIDE,
    ),
    _text("trial-guide-audit", "Then run this command:", "Rule; the command follows.", _GUIDE),
    _text("trial-pages", "Pages", "Head of the list that says which pages are form A, form B and key.", 14),
)

_KEY = (
    _text("trial-key", "Key", "Title of the last page: what each picture means.", 14),
    _text(
        "trial-key-only",
        "For the assessors only. Never show this page to readers.",
        "On the page with the key.",
        70,
    ),
    _text("trial-meaning", "What it says", "Head of a column of the key.", 20),
    _text("trial-how-to-rate", "How to rate an answer", "Head over the five categories.", 34),
    _text(
        "trial-correct",
        "It says what the picture says: what is done, with which thing, on or off.",
        "What the category correct means.",
        _GUIDE,
    ),
    _text("trial-partly", "It says a part of that, and nothing against it.", "Category partly.", _GUIDE),
    _text("trial-wrong", "It says something else.", "Category wrong.", _GUIDE),
    _text(
        "trial-opposite",
        "It says the reverse, or something that can hurt.",
        "Category opposite.",
        _GUIDE,
    ),
    _text("trial-none", "No answer, or “I do not know”.", "Category none.", _GUIDE),
)

TRIAL_TEXTS: tuple[FixedText, ...] = (*_PICTURE_SHEET, *_FORM, *_RUNNING, *_KEY)
"""Every fixed text of these sheets; its message context is ``interface/<id>``."""
