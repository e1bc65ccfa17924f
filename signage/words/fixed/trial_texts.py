"""The fixed words of the sheets about pictures, by id: the sheet of all pictures, the comprehension trial."""

from __future__ import annotations

from signage.words.fixed.text import FixedText

_GUIDE = 90
"""Characters of a rule for the person who runs a trial: one line and a half."""

_PICTURE_SHEET = (
    FixedText("pictures-title", "All pictures", "Title of the sheet that shows every picture.", 24),
    FixedText(
        "pictures-purpose",
        "To choose from and to proofread. Not for the wall.",
        "Below the title of the sheet of all pictures.",
        70,
    ),
    FixedText("pictures-colour", "Colour", "Head over the pictures in colour.", 14),
    FixedText("pictures-copier", "Photocopy", "Head over the pictures in black and white.", 14),
    FixedText(
        "pictures-untranslated", "Not translated", "Mark before a sentence in the source language.", 22
    ),
)

_FORM = (
    FixedText("trial-title", "What do the pictures say?", "Title of the form that readers fill in.", 30),
    FixedText("trial-form", "Form {form}", "Which of the two forms; the letter stays as it is.", 14),
    FixedText("trial-reader", "Reader number", "Label of a field on the form; never a name.", 18),
    FixedText("trial-date", "Date", "Label of a field on the form.", 12),
    FixedText(
        "trial-welcome",
        "We test the pictures, not you. Write what you think. If you do not know, leave the lines empty.",
        "To the reader, above the pictures.",
        110,
    ),
    FixedText(
        "trial-doing", "What is the person doing?", "Question beside each picture, above two lines.", 32
    ),
    FixedText("trial-thing", "What is this?", "Question beside a picture of a thing without a person.", 32),
    FixedText("trial-must", "What must you do?", "Second question beside each picture.", 32),
    FixedText(
        "trial-picture",
        "Picture {number}",
        "Stands for the picture where it is not seen, so that it gives no answer away.",
        20,
    ),
)

_RUNNING = (
    FixedText("trial-guide-title", "For the person who runs the trial", "Title of the first page.", 40),
    FixedText(
        "trial-guide-readers",
        "Ask people who will follow these pictures and have not yet seen them with words.",
        "Rule for the person who runs the trial.",
        _GUIDE,
    ),
    FixedText(
        "trial-guide-forms",
        "Give each reader one form: form A to one half of the readers, form B to the other half.",
        "Rule; the two forms show the pictures in different orders.",
        _GUIDE,
    ),
    FixedText("trial-guide-number", "Give each reader a number. Write down no name.", "Rule.", _GUIDE),
    FixedText(
        "trial-guide-help",
        "Show no other sheet. Do not help, and do not say whether an answer is right.",
        "Rule.",
        _GUIDE,
    ),
    FixedText(
        "trial-guide-write",
        "If a reader prefers to speak, write down the answer word for word.",
        "Rule.",
        _GUIDE,
    ),
    FixedText(
        "trial-guide-rate",
        "Afterwards two assessors rate every answer with the key, each without the other.",
        "Rule.",
        _GUIDE,
    ),
    FixedText(
        "trial-guide-type",
        "Type the ratings into this table: one row for each picture, reader and assessor.",
        "Rule; the name of a file follows on the next line.",
        _GUIDE,
    ),
    FixedText("trial-guide-audit", "Then run this command:", "Rule; the command follows.", _GUIDE),
    FixedText(
        "trial-pages", "Pages", "Head of the list that says which pages are form A, form B and key.", 14
    ),
)

_KEY = (
    FixedText("trial-key", "Key", "Title of the last page: what each picture means.", 14),
    FixedText(
        "trial-key-only",
        "For the assessors only. Never show this page to readers.",
        "On the page with the key.",
        70,
    ),
    FixedText("trial-meaning", "What it says", "Head of a column of the key.", 20),
    FixedText("trial-how-to-rate", "How to rate an answer", "Head over the five categories.", 34),
    FixedText(
        "trial-correct",
        "It says what the picture says: what is done, with which thing, on or off.",
        "What the category correct means.",
        _GUIDE,
    ),
    FixedText("trial-partly", "It says a part of that, and nothing against it.", "Category partly.", _GUIDE),
    FixedText("trial-wrong", "It says something else.", "Category wrong.", _GUIDE),
    FixedText(
        "trial-opposite",
        "It says the reverse, or something that can hurt.",
        "Category opposite.",
        _GUIDE,
    ),
    FixedText("trial-none", "No answer, or “I do not know”.", "Category none.", _GUIDE),
)

TRIAL_TEXTS: tuple[FixedText, ...] = (*_PICTURE_SHEET, *_FORM, *_RUNNING, *_KEY)
"""Every fixed text of these sheets; its message context is ``interface/<id>``."""
