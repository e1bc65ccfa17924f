"""The fixed words of the training pages, by id; their source language is always English."""

from __future__ import annotations

from signage.words.fixed.text import FixedText

_BUTTON = 24
"""Characters of a button on a phone that is 320 pixels wide."""

_GOING_ROUND = (
    FixedText("page-skip", "To the content", "Hidden link for people who use the keyboard.", _BUTTON),
    FixedText("page-languages", "Languages", "Opens the choice of languages.", _BUTTON),
    FixedText("page-display", "Display", "Opens the choice of text size and colours.", _BUTTON),
    FixedText("page-smaller", "Smaller text", "Button.", _BUTTON),
    FixedText("page-larger", "Larger text", "Button.", _BUTTON),
    FixedText("page-light", "Light", "Button: dark letters on a light page.", _BUTTON),
    FixedText("page-dark", "Dark", "Button: light letters on a dark page.", _BUTTON),
    FixedText("page-contrast", "Strong contrast", "Button: black and white only.", _BUTTON),
    FixedText("page-contents", "All protocols", "Link to the list of protocols.", _BUTTON),
    FixedText("page-steps", "All steps", "Link to the list of steps of a protocol.", _BUTTON),
    FixedText("page-begin", "Begin", "Link to the first step.", _BUTTON),
    FixedText("page-next", "Next", "Link to the next step or the next exercise.", 14),
    FixedText("page-back", "Back", "Link to the step or exercise before.", 14),
    FixedText("page-step-of", "Step {step} of {steps}", "How far the reader is.", 24),
    FixedText("page-more", "More", "Head over links to other pages.", _BUTTON),
    FixedText(
        "page-full-view",
        "All steps on one page",
        "Link to a page with the whole protocol, which can be printed.",
    ),
    FixedText("page-what-if", "If something goes wrong", "Link and title: what to do then.", 34),
    FixedText("page-trainer", "Trainer’s notes", "Link and title: a page for people who teach.", 30),
    FixedText(
        "page-address", "There is no page here.", "Title of the page for addresses that do not exist.", 40
    ),
    FixedText(
        "page-address-help",
        "The sheet may be older or newer than these pages. Ask before you use it.",
        "Below: There is no page here.",
        120,
    ),
)

_STEP = (
    FixedText("page-listen", "Read aloud", "Button: the phone speaks the text of the step.", _BUTTON),
    FixedText("page-stop-listening", "Stop reading", "Button while the phone speaks.", _BUTTON),
    FixedText("page-timer", "Start the time", "Button: counts down the seconds of the step.", _BUTTON),
    FixedText("page-timer-stop", "Stop the time", "Button while the time runs.", _BUTTON),
    FixedText("page-time-over", "Time is over.", "Shown and spoken when the seconds have passed.", _BUTTON),
)

_STATE = (
    FixedText("page-is-approved", "Approved.", "On every page of a protocol that is signed.", _BUTTON),
    FixedText(
        "page-withdrawn",
        "Withdrawn. Do not follow it. Ask.",
        "On every page of a protocol that was withdrawn.",
        60,
    ),
)

_CURRENT = (
    FixedText("page-current", "Is my sheet current?", "Link and title: compares the code of a sheet.", 34),
    FixedText(
        "page-code", "Code on the sheet", "Label of a field; the code has two groups of four signs.", 30
    ),
    FixedText("page-compare", "Compare", "Button: compares the code that was typed.", _BUTTON),
    FixedText("page-code-is", "Code of these pages: {code}", "The code to compare a sheet with.", 44),
    FixedText(
        "page-code-how",
        "Same code on your sheet: it was current on that day. Other code: ask before you use it.",
        "How to compare the two codes by eye.",
        150,
    ),
    FixedText("page-is-current", "Current on {date}.", "Answer: the sheet had the right code.", 50),
    FixedText(
        "page-is-replaced",
        "Replaced. Do not use this sheet. Ask for the new one.",
        "Answer: the code belongs to an older sheet.",
        90,
    ),
    FixedText(
        "page-replaced-since",
        "Replaced by {code} since {date}. Do not use this sheet. Ask for the new one.",
        "Answer: the code belongs to an older sheet.",
        110,
    ),
    FixedText(
        "page-is-withdrawn",
        "Withdrawn. Do not use this sheet. Ask.",
        "Answer: nothing takes the place of this sheet.",
        60,
    ),
    FixedText(
        "page-is-draft",
        "Draft. Nobody has signed this sheet. Do not use it for care.",
        "Answer: the sheet is a draft.",
        80,
    ),
    FixedText(
        "page-copy-gone",
        "Copy {number} was taken down. Do not use it. Ask.",
        "Answer: this copy of the sheet should not be on a wall any more.",
        70,
    ),
    FixedText(
        "page-copy-unknown",
        "Copy {number} was not on the list that day. Ask before you use it.",
        "Answer: nobody had entered this copy of the sheet when the pages were made.",
        90,
    ),
    FixedText("page-sheet-code", "On your sheet: {code}", "Beside the code of the pages.", 40),
    FixedText(
        "page-tells-until",
        "After {date} this page cannot tell any more.",
        "How long the pages can tell whether a sheet is current.",
        70,
    ),
    FixedText(
        "page-words-differ",
        "The steps are the same, the words have changed. Ask before you use the sheet.",
        "Answer: the first half of the code is right, the second is not.",
        120,
    ),
    FixedText(
        "page-cannot-tell",
        "These pages cannot tell. Do not use the sheet until you have asked.",
        "Answer: the code is not known, or the pages are too old.",
        120,
    ),
    FixedText(
        "page-made-on",
        "These pages were made on {date}. They may be out of date.",
        "At the foot of every page.",
        90,
    ),
)

_PRACTICE = (
    FixedText("page-practice", "Practice", "Link and title: exercises and quizzes.", _BUTTON),
    FixedText(
        "page-only-practice",
        "This is practice. It does not show that anyone is competent. Nothing is stored.",
        "On every page with exercises.",
        130,
    ),
    FixedText("page-exercise-of", "Exercise {page} of {pages}", "How far the learner is.", 30),
    FixedText("page-order", "Put in order", "Title of an exercise.", 30),
    FixedText(
        "page-order-task", "Move the steps until they follow each other as on the sheet.", "The task.", 110
    ),
    FixedText("page-earlier", "Earlier", "Button: moves a step up the list.", 16),
    FixedText("page-later", "Later", "Button: moves a step down the list.", 16),
    FixedText(
        "page-place",
        "{step}, place {place}",
        "Spoken after a step has moved in the list.",
        70,
    ),
    FixedText("page-check", "Check", "Button: judges the answer.", _BUTTON),
    FixedText("page-answer", "Show the answer", "Opens the right answer.", _BUTTON),
    FixedText("page-right", "Right.", "The answer is right.", _BUTTON),
    FixedText("page-not-right", "Not right. Look again.", "The answer is wrong.", 40),
    FixedText(
        "page-safe-not-ours",
        "No rule is broken, but it is not our order. Follow the sheet.",
        "The order of the learner breaks no rule of the ward; the sheet still counts.",
        110,
    ),
    FixedText("page-other-order", "This is not the order of the sheet.", "The order is wrong.", 60),
    FixedText("page-unsafe", "Not safe.", "The order could hurt someone; a reason follows.", _BUTTON),
    FixedText(
        "page-reason-at",
        "At “{step}”: {reason}",
        "Where and why an order is not safe.",
        160,
    ),
    FixedText("page-meaning", "What does the picture say?", "Title of a quiz.", 34),
    FixedText("page-container", "Where does it go?", "Title of a quiz about bins and tubs.", 34),
    FixedText("page-wrong-here", "What is wrong here?", "Title of an exercise.", 34),
    FixedText(
        "page-wrong-here-task",
        "This order has a mistake. Tap the step at which it becomes unsafe.",
        "The task.",
        110,
    ),
    FixedText("page-left-out", "Left out: {step}", "Names the step that was missing.", 60),
    FixedText("page-moved", "Moved: {step}", "Names the step that stood in the wrong place.", 60),
    FixedText("page-on-paper", "This exercise needs scripts. Use cards on paper instead.", "No scripts.", 90),
)

_REASONS = (
    FixedText("page-why-covered", "Something else still lies over it.", "Reason why an order is unsafe.", 80),
    FixedText("page-why-closed", "It is still closed.", "Reason: a zip or tie was not opened.", 80),
    FixedText("page-why-under", "A layer that belongs under it is not on.", "Reason.", 80),
    FixedText("page-why-too-late", "The layer over it is already on.", "Reason: it was put on too late.", 80),
    FixedText("page-why-stays-on", "A layer never comes off.", "Reason.", 80),
    FixedText("page-why-not-worn", "It is not on at that point.", "Reason.", 80),
    FixedText("page-why-no-rub", "Hands were not cleaned before it.", "Reason.", 80),
    FixedText(
        "page-why-wrong-layer", "Another hand layer is outside then.", "Reason: nothing is cleaned.", 80
    ),
    FixedText("page-why-skin", "Dirt meets bare skin.", "Reason.", 80),
    FixedText("page-why-face", "Dirty hands come near the face.", "Reason.", 80),
    FixedText("page-why-clean-kit", "Clean kit meets dirty hands or a dirty floor.", "Reason.", 80),
    FixedText("page-why-air", "The air or the kit is still dangerous to breathe.", "Reason.", 80),
    FixedText("page-why-no-bin", "Its bin is not there.", "Reason.", 80),
    FixedText("page-why-in-hand", "Something is still in the hand.", "Reason.", 80),
    FixedText("page-why-place", "You are not in the right place for it.", "Reason.", 80),
    FixedText("page-why-carried", "Dirt is carried into a clean place.", "Reason.", 80),
    FixedText("page-why-seat", "Sitting and standing do not fit.", "Reason.", 80),
    FixedText("page-why-check", "Something is missing before you go in.", "Reason: kit or a check.", 80),
    FixedText("page-why-other", "It breaks a rule of the ward.", "Reason, where no other fits.", 80),
)

_TRAINER = (
    FixedText(
        "page-trainer-aim", "Critical steps: ask, let them explain, then show.", "Below the title.", 90
    ),
    FixedText("page-ask", "Ask", "Head over the questions of the trainer.", _BUTTON),
    FixedText("page-ask-risk", "What could happen here, and to whom?", "Question of the trainer.", 80),
    FixedText("page-ask-watch", "What does the observer look for?", "Question of the trainer.", 80),
    FixedText("page-ask-mend", "It has gone wrong: what do you do first?", "Question of the trainer.", 80),
)

PAGE_TEXTS: tuple[FixedText, ...] = (
    *_GOING_ROUND,
    *_STEP,
    *_STATE,
    *_CURRENT,
    *_PRACTICE,
    *_REASONS,
    *_TRAINER,
)
"""Every fixed text of the pages; its message context is ``interface/<id>``."""
