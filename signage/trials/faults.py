"""The faults that a filled table of ratings can have, each with its code, its reason and its cure."""

from __future__ import annotations

from signage.ground.rule import S1, Rule

TABLE = Rule(
    "TR-1",
    "table-unreadable",
    S1,
    "The table is missing, larger than 2 MB, not UTF-8, or not CSV.",
    "What cannot be read with certainty is not counted.",
    "a table saved in the encoding of an older office programme",
    "Save the table as 'CSV UTF-8' with commas or semicolons.",
)
COLUMN = Rule(
    "TR-2",
    "columns-differ",
    S1,
    "A column is missing, unknown or there twice.",
    "Ratings would be counted for the wrong picture or reader.",
    "a column named 'categorie'",
    "Use the columns of the table that was drawn beside the form; 'answer' and 'note' may be added.",
)
FIELDS = Rule(
    "TR-3",
    "fields-differ",
    S1,
    "A row has more or fewer fields than the first line.",
    "A lost separator moves every value into the wrong column.",
    "apron-off;R7;correct in a table of six columns",
    "Compare the separators of the row with those of the row above.",
)
VALUE = Rule(
    "TR-4",
    "value-unknown",
    S1,
    "A form is neither A nor B, a number is none, or a category is not one of the five.",
    "A mistyped category would be left out of the share.",
    "corect",
    "Use A or B, a whole number, and correct, partly, wrong, opposite or none.",
)
PICTURE = Rule(
    "TR-5",
    "picture-unknown",
    S1,
    "A picture is named that the library does not have.",
    "The ratings would count for no picture.",
    "apron-of",
    "Use the name as it stands in the table that was drawn beside the form.",
)
PERSON = Rule(
    "TR-6",
    "not-an-id",
    S1,
    "A reader or rater is not an id of at most 16 letters and digits; a reader's holds a digit.",
    "Trials need no names, and a table with names is personal data.",
    "reader 'Maria B.'",
    "Write the number from the form, such as 7 or R7.",
)
REPEATED = Rule(
    "TR-7",
    "rating-repeated",
    S1,
    "The same rater has rated the same answer twice.",
    "One of the two would count unseen.",
    "two rows for apron-off, reader R7, rater 1",
    "Delete one of the two rows.",
)
NUMBER = Rule(
    "TR-8",
    "number-contradicts",
    S1,
    "A number of a form stands for another picture than in an earlier row.",
    "Answers may have been typed beside the wrong picture.",
    "number 7 of form A is apron-off in one row and hood-off in another",
    "Compare the number with the key of the trial.",
)
RATERS = Rule(
    "TR-9",
    "raters-not-two",
    S1,
    "The table does not hold the ratings of exactly two people.",
    "How far two people agree shows whether the categories mean anything.",
    "all rows have the rater 1",
    "Let a second person rate all answers without seeing the first ratings.",
)
ONCE = Rule(
    "TR-10",
    "rated-once",
    S1,
    "An answer has a rating of one of the two raters only.",
    "It can be neither counted nor compared.",
    "apron-off, reader R7 has no row of rater 2",
    "Add the rating that is missing; write none for an answer that was left empty.",
)

RULES: tuple[Rule, ...] = (
    TABLE, COLUMN, FIELDS, VALUE, PICTURE, PERSON, REPEATED, NUMBER, RATERS, ONCE,
)  # fmt: skip
"""Every fault in the order of its code, for explanations."""
