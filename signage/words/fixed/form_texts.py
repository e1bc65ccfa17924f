"""The fixed words of forms for the ward, by id: recall, notice for an empty place, audit, incident slip."""

from __future__ import annotations

from signage.words.fixed.text import FixedText

_LINE = 100
"""Characters of a sentence below a title: one line and a half."""

_SHARED = (
    FixedText("form-number", "Number", "Head of a column: the number printed on a copy of a sheet.", 14),
    FixedText("form-where", "Where", "Head of a column: where on the ward a copy hangs.", 14),
    FixedText("form-sheet", "Sheet", "Head of a column: which sheet it is.", 14),
    FixedText("form-remark", "Remark", "Head of an empty column to write in.", 14),
    FixedText("form-day", "Date", "Label of a field to write in.", 14),
    FixedText("form-role", "Role", "Label of a field: who filled it in, by role and never by name.", 14),
    FixedText("form-language", "Language", "Label of a field.", 14),
    FixedText("form-learner", "Learner {number}", "Who has a card; learners have numbers, no names.", 24),
    FixedText("form-no-names", "No names. No health data.", "On every form to write on.", 44),
)

_RECALL = (
    FixedText("recall-title", "Recall", "Title of the list of sheets that must come down.", 24),
    FixedText(
        "recall-purpose",
        "Walk in this order. Take each sheet down and tick it. Not there? Write where you looked.",
        "Below the title, to whoever collects the sheets.",
        _LINE,
    ),
    FixedText("recall-withdrawn", "withdrawn", "Why a sheet must come down: nothing takes its place.", 18),
    FixedText("recall-replaced", "replaced by {code}", "Why a sheet must come down.", 30),
    FixedText("recall-none", "ended", "Why a sheet must come down: nobody has signed a new one.", 20),
    FixedText(
        "notice-title", "Withdrawn. Ask.", "Very large, in the place of a sheet that was taken down.", 20
    ),
    FixedText(
        "notice-why",
        "The sheet that hung here is no longer valid. Ask before you begin: {role}.",
        "Below it; the role is that of the owner.",
        _LINE,
    ),
)

_AUDIT = (
    FixedText("audit-title", "Audit round", "Title of the form for looking at every mounted sheet.", 24),
    FixedText(
        "audit-purpose",
        "Go to each sheet. Tick what is right. Write what is not.",
        "Below the title.",
        _LINE,
    ),
    FixedText("audit-present", "There", "Head of a column of boxes: the sheet hangs there.", 12),
    FixedText("audit-revision", "Right code", "Head of a column of boxes: its code is that of the list.", 12),
    FixedText("audit-readable", "Readable", "Head of a column of boxes.", 12),
    FixedText("audit-clean", "Clean", "Head of a column of boxes.", 12),
    FixedText("audit-place", "Right spot", "Head of a column of boxes: it hangs where the list says.", 14),
    FixedText(
        "audit-others",
        "Other sheets on the walls: home-made, unnumbered, or missing from this list",
        "Head over empty lines.",
        _LINE,
    ),
)

_INCIDENT = (
    FixedText("incident-title", "Was the sheet part of the cause?", "Title of a slip after an incident.", 40),
    FixedText(
        "incident-first",
        "Care for the person first, under local rules. This slip is about the sheet only.",
        "Below the title.",
        _LINE,
    ),
    FixedText("incident-step", "Step on the sheet", "Label of a field: the number of the step.", 24),
    FixedText("incident-part", "Part of the cause", "Label before three boxes.", 24),
    FixedText("incident-yes", "Yes", "Beside a box.", 10),
    FixedText("incident-no", "No", "Beside a box.", 10),
    FixedText("incident-unsure", "Not sure", "Beside a box.", 14),
    FixedText("incident-mend", "What should the sheet say or show?", "Head over empty lines.", 50),
    FixedText("incident-fixed", "Mended in revision", "Label of a field, filled in later.", 28),
)

FORM_TEXTS: tuple[FixedText, ...] = (*_SHARED, *_RECALL, *_AUDIT, *_INCIDENT)
"""Every fixed text of these forms; its message context is ``interface/<id>``."""
