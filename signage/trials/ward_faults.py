"""The faults of tables that come back from the ward: changes of the register, audits, incident slips."""

from __future__ import annotations

from signage.ground.rule import S1, Rule

TABLE = Rule(
    "RG-1",
    "ward-table-unreadable",
    S1,
    "The table is missing, larger than 2 MB, not UTF-8, or not CSV.",
    "What cannot be read with certainty is not written into the register.",
    "a table saved in the encoding of an older office programme",
    "Save the table as 'CSV UTF-8' with commas or semicolons.",
)
COLUMN = Rule(
    "RG-2",
    "ward-columns-differ",
    S1,
    "A column is missing, unknown or there twice.",
    "A value would be written about another thing than was meant.",
    "a column named 'nummer'",
    "Use the columns that the message names.",
)
FIELDS = Rule(
    "RG-3",
    "ward-fields-differ",
    S1,
    "A row has more or fewer fields than the first line.",
    "A lost separator moves every value into the wrong column.",
    "LB-0017-K;s1 in a table of three columns",
    "Compare the separators of the row with those of the row above.",
)
MISTYPED = Rule(
    "RG-4",
    "copy-number-mistyped",
    S1,
    "A copy number does not agree with its check character.",
    "A change would be written about another copy, and the one that hangs there would be forgotten.",
    "LB-0071-K in the place of LB-0017-K",
    "Read the number off the sheet again: two letters, digits, one check character.",
)
UNKNOWN = Rule(
    "RG-5",
    "copy-unknown",
    S1,
    "No copy of that number was ever printed for this library.",
    "Drafts and proofs get no number and must not hang on a wall; a copy of elsewhere cannot be recalled.",
    "LB-0999-X, when fewer copies were printed",
    "Print released sheets with 'signage draw --copies', and mount those.",
)
VALUE = Rule(
    "RG-6",
    "ward-value-unknown",
    S1,
    "A day, an answer or a word is none of those that may stand there.",
    "A mistyped word would be counted as something else.",
    "maybe",
    "Use one of the words that the message names.",
)
PLACE = Rule(
    "RG-7",
    "slot-unknown",
    S1,
    "A slot is named that no ward file declares, or a learner that is no number.",
    "A copy at a place that is not declared is found by nobody.",
    "slot 'wall-9'",
    "Use the id of a slot of the ward file, or declare the slot there.",
)
OUTDATED = Rule(
    "RG-8",
    "copy-not-current",
    S1,
    "A copy that is to be mounted is not the sheet that is released today.",
    "A correct sheet of last year's protocol is a hazard.",
    "a copy of revision 1, after revision 2 was signed",
    "Destroy the copy, print the sheet that is released now, and mount that.",
)
STATE = Rule(
    "RG-9",
    "copy-state-contradicts",
    S1,
    "A change does not go with what the register knows of the copy.",
    "The register and the walls would say different things.",
    "to remove a copy that was never mounted",
    "'signage register list --number NUMBER' tells what happened to a copy.",
)
NO_NOTE = Rule(
    "RG-10",
    "loss-unexplained",
    S1,
    "A copy is said to be lost, and no note says where it was looked for.",
    "A recall counts a lost copy as done, so somebody must have looked for it.",
    "lost, with an empty note",
    "Write what was done to find it.",
)
PERSONAL = Rule(
    "RG-11",
    "personal-data",
    S1,
    "A table from the ward has a column for names, contacts or health.",
    "Who was hurt and how is recorded elsewhere under local rules; this tool keeps roles and numbers only.",
    "a column 'patient'",
    "Delete the column.",
)

RULES: tuple[Rule, ...] = (
    TABLE, COLUMN, FIELDS, MISTYPED, UNKNOWN, VALUE, PLACE, OUTDATED, STATE, NO_NOTE, PERSONAL,
)  # fmt: skip
"""Every fault in the order of its code, for explanations."""
