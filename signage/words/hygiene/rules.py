"""The rules of clean text, in source texts and translations: what nobody sees, or sees as junk."""

from __future__ import annotations

from signage.ground.rule import S1, S2, Rule

HYGIENE = (
    Rule(
        "WD-21", "markup-in-text", S1,
        "A text holds a tag, an entity, an escape or a format sign of another programme.",
        "It is printed letter by letter.",
        "<b>Stop</b>, &amp;, &#39;, **Stop**, %s or \\n",
        "Write the plain words and signs; sheets have no markup.",
    ),
    Rule(
        "WD-22", "garbled-letters", S1,
        "A text holds letters that were read in a wrong encoding, U+FFFD, or codes that are no characters.",
        "The words cannot be read.",
        "FermÃ© or donâ€™t",
        "Take the text from its origin again and save it as UTF-8.",
    ),
    Rule(
        "WD-23", "letters-lost", S1,
        "A text holds question marks where letters were.",
        "The words cannot be read.",
        "Fran?ais, or ?????? for a whole text",
        "Write the letters again; the file they came from was saved without them.",
    ),
    Rule(
        "WD-24", "unfinished-text", S1,
        "A text is a reminder to write it, breaks off, or has no word where the source has one.",
        "The reminder would be printed on the wall.",
        "TODO, FIXME, TBD, lorem ipsum, [translation missing], …",
        "Write the text, or leave msgstr empty until it is known.",
    ),
    Rule(
        "WD-25", "line-break-in-text", S2,
        "A text holds a line break or a tab that its source does not hold.",
        "The programme breaks lines where they fit; a typed break leaves half a line, a tab has no shape.",
        'msgstr "Take off\\nthe hood"',
        "Put a space in its place.",
    ),
    Rule(
        "WD-26", "stray-spaces", S2,
        "A text begins or ends with a space, or has two spaces in a row.",
        "Lines are set askew, and what looks the same compares as different.",
        "'Take off  the hood '",
        "Keep one space between words and none outside.",
    ),
    Rule(
        "WD-27", "hidden-character", S2,
        "An invisible character stands where its script has no use for it: zero-width space, joiner or "
        "non-joiner, soft hyphen, filler, byte order mark.",
        "The word breaks in the middle, letters join wrongly, and checks and readers do not know the word.",
        "U+00AD, the soft hyphen, inside the word gloves",
        "Delete the character; type the word again where it cannot be seen.",
    ),
    Rule(
        "WD-28", "letters-of-another-code", S1,
        "A text holds presentation forms, fullwidth or mathematical letters in place of letters.",
        "They often stand in reverse order, and neither the glossary nor a reading voice knows the words.",
        "U+FEAD in place of U+0631, or ﬁ as one sign",
        "Type the word again with the keyboard of its language.",
    ),
    Rule(
        "WD-29", "hidden-message", S1,
        "A text holds tag characters or other codes from U+E0000 on.",
        "They are seen by no person and read by programmes: what was approved is not what is stored.",
        "U+E0041",
        "Delete the characters; type the text again.",
    ),
    Rule(
        "WD-30", "mark-without-letter", S1,
        "A vowel sign or accent has no letter that it can stand on.",
        "It is printed with a dotted circle, or on the wrong letter.",
        "U+093F at the beginning of a Hindi word",
        "Type the word again; the sign belongs after its letter.",
    ),
    Rule(
        "WD-31", "piled-marks", S1,
        "More marks stand on one letter than any language writes, or one of them stands twice.",
        "They run into the lines above and below.",
        "a with 3000 accents",
        "Type the letter again with its own mark.",
    ),
    Rule(
        "WD-32", "foreign-script", S1,
        "A word or a letter is of a script that the language is not written in.",
        "Its reader cannot read it.",
        "a Bengali letter in a Hindi word",
        "Write the word in the script of the language. Codes in Latin capitals, such as N95, may stay.",
    ),
    Rule(
        "WD-33", "foreign-letter", S2,
        "A letter is of the right script, and its language does not write it.",
        "It looks the same at most, and searching, shaping and reading aloud fail.",
        "the Persian letters ی and ک in Arabic",
        "Type the word again with the keyboard of the language.",
    ),
    Rule(
        "WD-34", "quoted-text", S2,
        "Quotation marks stand round a whole text.",
        "They came from a spreadsheet or a message, and are printed as if somebody said the words.",
        "“Take off the hood”",
        "Remove the marks.",
    ),
    Rule(
        "WD-35", "words-of-the-source", S2,
        "A translation keeps words of the source language.",
        "Somebody who does not read that language loses what they say.",
        'msgid "Take off the hood" with msgstr "Enlever the hood"',
        "Translate the words; where a name is meant to stay, write the comment '# same as source'.",
    ),
    Rule(
        "WD-36", "other-language", S2,
        "The small words of a text, of the source language as well, are those of another language.",
        "The sheet would speak two languages, and one of them to nobody.",
        "'Den Kittel ausziehen und in die Tonne' in a French catalogue",
        "Translate into the language of the folder; perhaps an entry was pasted into the wrong file.",
    ),
    Rule(
        "WD-37", "no-glyph", S1,
        "A text holds a character that no font of the programme or of the library can show.",
        "It would be printed as an empty box; sheets with it are refused.",
        "an emoji",
        "Use a character of the script, or put a font that has it into content/fonts.",
    ),
    Rule(
        "WD-38", "far-too-long", S1,
        "A text has more than 1000 characters.",
        "No sheet and no page has room for it; another file was probably pasted into it.",
        "a whole guideline in one msgstr",
        "Write one or two sentences; divide what does not fit into steps.",
    ),
)  # fmt: skip
"""WD-21 to WD-38."""
