"""The fixed words of the training pages, by id; their source language is always English."""

from __future__ import annotations

from signage.words.fixed.text import FixedText
from signage.words.fixed.text import fixed_text as _text

_BUTTON = 24
"""Characters of a button on a phone that is 320 pixels wide."""

_GOING_ROUND = (
    _text("page-skip", "To the content", "Hidden link for people who use the keyboard.", _BUTTON),
    _text("page-languages", "Languages", "Opens the choice of languages.", _BUTTON),
    _text("page-display", "Display", "Opens the choice of text size and colours.", _BUTTON),
    _text("page-smaller", "Smaller text", "Button.", _BUTTON),
    _text("page-larger", "Larger text", "Button.", _BUTTON),
    _text("page-light", "Light", "Button: dark letters on a light page.", _BUTTON),
    _text("page-dark", "Dark", "Button: light letters on a dark page.", _BUTTON),
    _text("page-contrast", "Strong contrast", "Button: black and white only.", _BUTTON),
    _text("page-contents", "All protocols", "Link to the list of protocols.", _BUTTON),
    _text("page-steps", "All steps", "Link to the list of steps of a protocol.", _BUTTON),
    _text("page-begin", "Begin", "Link to the first step.", _BUTTON),
    _text("page-next", "Next", "Link to the next step or the next exercise.", 14),
    _text("page-back", "Back", "Link to the step or exercise before.", 14),
    _text("page-step-of", "Step {step} of {steps}", "How far the reader is.", 24, "step", "steps"),
    _text("page-more", "More", "Head over links to other pages.", _BUTTON),
    _text(
        "page-full-view",
        "All steps on one page",
        "Link to a page with the whole protocol, which can be printed.",
    ),
    _text("page-what-if", "If something goes wrong", "Link and title: what to do then.", 34),
    _text("page-trainer", "Trainer’s notes", "Link and title: a page for people who teach.", 30),
    _text("page-address", "There is no page here.", "Title of the page for addresses that do not exist.", 40),
    _text(
        "page-address-help",
        "The sheet may be older or newer than these pages. Ask before you use it.",
        "Below: There is no page here.",
        120,
    ),
)

_STEP = (
    _text("page-listen", "Read aloud", "Button: the phone speaks the text of the step.", _BUTTON),
    _text("page-stop-listening", "Stop reading", "Button while the phone speaks.", _BUTTON),
    _text("page-timer", "Start the time", "Button: counts down the seconds of the step.", _BUTTON),
    _text("page-timer-stop", "Stop the time", "Button while the time runs.", _BUTTON),
    _text("page-time-over", "Time is over.", "Shown and spoken when the seconds have passed.", _BUTTON),
)

_CURRENT = (
    _text("page-current", "Is my sheet current?", "Link and title: compares the code of a sheet.", 34),
    _text("page-code", "Code on the sheet", "Label of a field; the code has two groups of four signs.", 30),
    _text("page-compare", "Compare", "Button: compares the code that was typed.", _BUTTON),
    _text("page-code-is", "Code of these pages: {code}", "The code to compare a sheet with.", 44, "code"),
    _text(
        "page-code-how",
        "Same code on your sheet: it was current on that day. Other code: ask before you use it.",
        "How to compare the two codes by eye.",
        150,
    ),
    _text("page-is-current", "Current on {date}.", "Answer: the sheet had the right code.", 50, "date"),
    _text(
        "page-is-replaced",
        "Replaced. Do not use this sheet. Ask for the new one.",
        "Answer: the code belongs to an older sheet.",
        90,
    ),
    _text(
        "page-words-differ",
        "The steps are the same, the words have changed. Ask before you use the sheet.",
        "Answer: the first half of the code is right, the second is not.",
        120,
    ),
    _text(
        "page-cannot-tell",
        "These pages cannot tell. Do not use the sheet until you have asked.",
        "Answer: the code is not known, or the pages are too old.",
        120,
    ),
    _text(
        "page-made-on",
        "These pages were made on {date}. They may be out of date.",
        "At the foot of every page.",
        90,
        "date",
    ),
)

_PRACTICE = (
    _text("page-practice", "Practice", "Link and title: exercises and quizzes.", _BUTTON),
    _text(
        "page-only-practice",
        "This is practice. It does not show that anyone is competent. Nothing is stored.",
        "On every page with exercises.",
        130,
    ),
    _text("page-exercise-of", "Exercise {page} of {pages}", "How far the learner is.", 30, "page", "pages"),
    _text("page-order", "Put in order", "Title of an exercise.", 30),
    _text(
        "page-order-task", "Move the steps until they follow each other as on the sheet.", "The task.", 110
    ),
    _text("page-earlier", "Earlier", "Button: moves a step up the list.", 16),
    _text("page-later", "Later", "Button: moves a step down the list.", 16),
    _text(
        "page-place",
        "{step}, place {place}",
        "Spoken after a step has moved in the list.",
        70,
        "step",
        "place",
    ),
    _text("page-check", "Check", "Button: judges the answer.", _BUTTON),
    _text("page-answer", "Show the answer", "Opens the right answer.", _BUTTON),
    _text("page-right", "Right.", "The answer is right.", _BUTTON),
    _text("page-not-right", "Not right. Look again.", "The answer is wrong.", 40),
    _text(
        "page-safe-not-ours",
        "No rule is broken, but it is not our order. Follow the sheet.",
        "The order of the learner breaks no rule of the ward; the sheet still counts.",
        110,
    ),
    _text("page-other-order", "This is not the order of the sheet.", "The order is wrong.", 60),
    _text("page-unsafe", "Not safe.", "The order could hurt someone; a reason follows.", _BUTTON),
    _text(
        "page-reason-at",
        "At “{step}”: {reason}",
        "Where and why an order is not safe.",
        160,
        "step",
        "reason",
    ),
    _text("page-meaning", "What does the picture say?", "Title of a quiz.", 34),
    _text("page-container", "Where does it go?", "Title of a quiz about bins and tubs.", 34),
    _text("page-wrong-here", "What is wrong here?", "Title of an exercise.", 34),
    _text(
        "page-wrong-here-task",
        "This order has a mistake. Tap the step at which it becomes unsafe.",
        "The task.",
        110,
    ),
    _text("page-left-out", "Left out: {step}", "Names the step that was missing.", 60, "step"),
    _text("page-moved", "Moved: {step}", "Names the step that stood in the wrong place.", 60, "step"),
    _text("page-on-paper", "This exercise needs scripts. Use cards on paper instead.", "No scripts.", 90),
)

_REASONS = (
    _text("page-why-covered", "Something else still lies over it.", "Reason why an order is unsafe.", 80),
    _text("page-why-closed", "It is still closed.", "Reason: a zip or tie was not opened.", 80),
    _text("page-why-under", "A layer that belongs under it is not on.", "Reason.", 80),
    _text("page-why-too-late", "The layer over it is already on.", "Reason: it was put on too late.", 80),
    _text("page-why-stays-on", "A layer never comes off.", "Reason.", 80),
    _text("page-why-not-worn", "It is not on at that point.", "Reason.", 80),
    _text("page-why-no-rub", "Hands were not cleaned before it.", "Reason.", 80),
    _text("page-why-wrong-layer", "Another hand layer is outside then.", "Reason: nothing is cleaned.", 80),
    _text("page-why-skin", "Dirt meets bare skin.", "Reason.", 80),
    _text("page-why-face", "Dirty hands come near the face.", "Reason.", 80),
    _text("page-why-clean-kit", "Clean kit meets dirty hands or a dirty floor.", "Reason.", 80),
    _text("page-why-air", "The air or the kit is still dangerous to breathe.", "Reason.", 80),
    _text("page-why-no-bin", "Its bin is not there.", "Reason.", 80),
    _text("page-why-in-hand", "Something is still in the hand.", "Reason.", 80),
    _text("page-why-place", "You are not in the right place for it.", "Reason.", 80),
    _text("page-why-carried", "Dirt is carried into a clean place.", "Reason.", 80),
    _text("page-why-seat", "Sitting and standing do not fit.", "Reason.", 80),
    _text("page-why-check", "Something is missing before you go in.", "Reason: kit or a check.", 80),
    _text("page-why-other", "It breaks a rule of the ward.", "Reason, where no other fits.", 80),
)

_TRAINER = (
    _text("page-trainer-aim", "Critical steps: ask, let them explain, then show.", "Below the title.", 90),
    _text("page-ask", "Ask", "Head over the questions of the trainer.", _BUTTON),
    _text("page-ask-risk", "What could happen here, and to whom?", "Question of the trainer.", 80),
    _text("page-ask-watch", "What does the observer look for?", "Question of the trainer.", 80),
    _text("page-ask-mend", "It has gone wrong: what do you do first?", "Question of the trainer.", 80),
)

PAGE_TEXTS: tuple[FixedText, ...] = (
    *_GOING_ROUND,
    *_STEP,
    *_CURRENT,
    *_PRACTICE,
    *_REASONS,
    *_TRAINER,
)
"""Every fixed text of the pages; its message context is ``interface/<id>``."""
