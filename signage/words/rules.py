"""Every fault of words that is looked for: what it is, why it matters, an example and the cure."""

from __future__ import annotations

from signage.ground.rule import S1, S2, S3, Rule
from signage.words.hygiene.rules import HYGIENE
from signage.words.meaning.rules import MEANING

_COVERAGE = (
    Rule(
        "WD-1", "missing-translation", S1,
        "A text of a locale in use has no translation.",
        "The lost step may be the one that cleans the hands.",
        'msgid "Rub both hands for {time}." with msgstr ""',
        "Translate the entry, or set the locale to in-work in library.yaml.",
    ),
    Rule(
        "WD-2", "doubtful-translation", S1,
        "An entry of a locale in use carries the flag fuzzy.",
        "A doubtful sentence on a wall is read as a sure one.",
        '#, fuzzy above msgid "Take off the hood."',
        "Compare the translation with the source, mend it and remove the flag fuzzy.",
    ),
    Rule(
        "WD-3", "stale-translation", S1,
        "The source text has changed since it was translated.",
        "The wall would show the old instruction.",
        '#| msgid "Wait 30 s." above msgid "Wait 60 s."',
        "Run 'signage words update', translate the new source text and remove the flag fuzzy.",
    ),
    Rule(
        "WD-4", "blank-text", S1,
        "A source text or a translation holds only spaces or invisible characters.",
        "It counts as written and prints as nothing.",
        'msgstr "  ", or text: "\\u200b"',
        "Write the text, or leave msgstr empty.",
    ),
    Rule(
        "WD-5", "untranslated-text", S2,
        "A translation is the source text, at most with other spaces, signs or capitals.",
        "Somebody who does not read the source language cannot follow it.",
        'msgid "Stand up." with msgstr "Stand up."',
        "Translate it; where it is meant to be the same, write the comment '# same as source'.",
    ),
    Rule(
        "WD-6", "placeholders-differ", S1,
        "A translation lacks a placeholder of the source, has one too many, or breaks one.",
        "A time, a bin or an item would be missing from the sheet.",
        'msgid "Rub for {time}." with msgstr "Frictionnez."',
        "Use each placeholder of the source as often as the source does, letter by letter.",
    ),
    Rule(
        "WD-7", "typed-number", S1,
        "A translation holds a number that the source text does not hold.",
        "A number typed by hand does not change when the policy does.",
        'msgid "Rub for {time}." with msgstr "Frictionnez {time}, 30 s."',
        "Use the placeholder; numbers are written by the programme in the numerals of the locale.",
    ),
    Rule(
        "WD-8", "forbidden-term", S2,
        "A translation uses a form that the glossary forbids for the thing it speaks of.",
        "A look-alike word takes the wrong garment off.",
        "respirator rendered by the word for a surgical mask",
        "Use an approved form of terms.yaml.",
    ),
    Rule(
        "WD-9", "term-missing", S2,
        "A text names a thing of the glossary, or puts it on or off, without an approved form of its name.",
        "One thing must have one name on all sheets of a ward.",
        "outer gloves rendered as 'gloves'",
        "Use an approved form of terms.yaml, or add the form that the ward uses to terms.yaml.",
    ),
    Rule(
        "WD-10", "other-item-named", S1,
        "A translation names a garment that neither the source text nor the step names.",
        "The reader takes off another garment than the step says.",
        "a step that takes off the outer gloves names the inner gloves",
        "Name the garment of the source text.",
    ),
    Rule(
        "WD-11", "not-normalised", S2,
        "A text is not in Unicode normalisation form C.",
        "Search and comparison fail on text that looks the same.",
        "e followed by U+0301 in place of é",
        "Save the file in normalisation form C; 'signage words update' does it.",
    ),
    Rule(
        "WD-12", "unpaired-isolate", S1,
        "A text opens or closes a direction isolate (U+2066 to U+2069) without its partner.",
        "All text after it may be shown in the wrong order.",
        "U+2068 without U+2069",
        "Remove the characters; the programme sets isolates round every inserted value.",
    ),
    Rule(
        "WD-13", "mixed-script-word", S2,
        "A word mixes Latin, Greek or Cyrillic letters with letters of another script.",
        "Look-alike letters break search, shaping and reading aloud.",
        "a Latin 'a' inside a Cyrillic word",
        "Type the word again with the keyboard of its own script.",
    ),
    Rule(
        "WD-14", "unknown-context", S2,
        "An entry belongs to no text of the library.",
        "Its translation is never printed, and nobody notices.",
        'msgctxt "layered-protection/apron-of/text"',
        "Correct the context, or run 'signage words update' to keep the entry as obsolete.",
    ),
    Rule(
        "WD-15", "checked-by-translator", S2,
        "The person who checked an entry is the person who translated it.",
        "Nobody sees the own mistake; a second person must compare.",
        "# translated: nurse-1 2026-11-25 and # checked: nurse-1 2026-11-25",
        "Have another person check the entry.",
    ),
    Rule(
        "WD-16", "unreadable-mark", S2,
        "A comment begins like a mark (translated, checked, origin) but is not one.",
        "Who checked the text, and when, would be lost.",
        "# checked: yes",
        "Write '# checked: ROLE-OR-ID 2026-11-26', '# translated: …' or '# origin: machine'.",
    ),
    Rule(
        "WD-17", "missing-catalogue", S1,
        "A locale in use lacks its catalogue.",
        "None of its texts can be printed.",
        "locales/fr/LC_MESSAGES/content.po does not exist",
        "Run 'signage words add TAG', or set the locale to in-work in library.yaml.",
    ),
    Rule(
        "WD-18", "unknown-locale", S3,
        "CLDR has no data for the language tag.",
        "Numbers, dates and units would be written as in no language.",
        "zz",
        "Compare the tag with the list of languages; a region may follow, as in pt-BR.",
    ),
    Rule(
        "WD-19", "unknown-numerals", S2,
        "library.yaml names numerals for a locale that are no decimal numbering system of CLDR.",
        "The programme cannot write any number of the locale.",
        "numerals: arabic",
        "Use a CLDR name, such as latn, arab, arabext, deva, beng or mymr.",
    ),
    Rule(
        "WD-20", "placeholder-without-value", S1,
        "A text has a placeholder that its step cannot fill.",
        "The sentence would have a hole.",
        "{time} in a step without seconds",
        "Give the step the value (seconds, item, bin, to, amount) or remove the placeholder.",
    ),
    Rule(
        "WD-39", "script-without-font", S1,
        "No font of the programme or of the library has the letters that a language is written in.",
        "Nothing can be printed in the language, however well it is translated.",
        "Tibetan or N’Ko, without a font in content/fonts",
        "Put a font of the script, as a .ttf or .otf file, into content/fonts before you translate.",
    ),
)  # fmt: skip

_CATALOGUE_FILE = (
    Rule(
        "PO-1", "unreadable-catalogue", S1,
        "A catalogue could not be opened or is larger than 5 MB.",
        "None of its translations can be used.",
        "a folder named content.po",
        "Put back the file; the catalogue of a library has far less than 5 MB.",
    ),
    Rule(
        "PO-2", "not-utf-8", S1,
        "A line, or the whole file, is not UTF-8.",
        "Letters would be guessed.",
        "a file saved as ISO 8859-1 or as UTF-16",
        "Save the file as UTF-8.",
    ),
    Rule(
        "PO-3", "byte-order-mark", S2,
        "The file begins with a byte order mark.",
        "Many readers of PO files take it for part of the first line.",
        "EF BB BF before the first comment",
        "Save as UTF-8 without byte order mark; 'signage words update' does it.",
    ),
    Rule(
        "PO-4", "wrong-charset", S1,
        "The header names another character set than UTF-8.",
        "The next editor of the file would read other letters.",
        '"Content-Type: text/plain; charset=ISO-8859-1\\n"',
        "Save the file as UTF-8 and write charset=UTF-8 in its header.",
    ),
    Rule(
        "PO-5", "missing-header", S2,
        "The file has no header, the entry with an empty msgid and no context.",
        "PO editors need it to know the language and the character set.",
        "a file that begins with the first text",
        "Run 'signage words update'.",
    ),
    Rule(
        "PO-6", "broken-quoting", S1,
        "A string does not begin and end with a quotation mark on its line.",
        "Part of the text would be lost.",
        'msgstr "Retirez le tablier.',
        'Put the whole text between two quotation marks; a quotation mark inside is written \\".',
    ),
    Rule(
        "PO-7", "unknown-escape", S1,
        "A backslash stands before a character that it cannot stand before.",
        "The text would change.",
        'msgstr "l\\\'apron"',
        'Only \\n, \\t, \\r, \\" and \\\\ are known.',
    ),
    Rule(
        "PO-8", "unknown-line", S1,
        "A line is neither a comment nor msgctxt, msgid, msgstr or a string.",
        "Its text would be lost.",
        'msgtxt "Take off the apron."',
        "Correct the key word, or begin the line with # to make it a comment.",
    ),
    Rule(
        "PO-9", "incomplete-entry", S1,
        "An entry lacks its context, its msgid or its msgstr, or has one of them twice.",
        "The text cannot be matched with the library.",
        "msgctxt and msgstr without msgid",
        "Complete the entry: one msgctxt, one msgid and one msgstr, in this order.",
    ),
    Rule(
        "PO-10", "repeated-entry", S1,
        "Two entries have the same context.",
        "Which of two translations prints would be chance.",
        'msgctxt "kit/apron/name" twice',
        "Keep the right one and delete the other.",
    ),
    Rule(
        "PO-11", "plural-entry", S1,
        "An entry has plural forms.",
        "No text of a library has any; numbers with units are written by CLDR.",
        "msgid_plural",
        "Delete msgid_plural and write one msgstr.",
    ),
    Rule(
        "PO-12", "direction-override", S1,
        "The file holds one of the characters U+202A to U+202E.",
        "They change the order in which text is shown and can hide what it says.",
        "U+202E before a number",
        "Remove the character.",
    ),
    Rule(
        "PO-13", "control-character", S1,
        "The file holds a control character.",
        "It has no shape and can cut the text.",
        "U+0000 inside msgstr",
        "Remove the character.",
    ),
    Rule(
        "PO-14", "wrong-language", S2,
        "The header names another language than the folder.",
        "The file may be in the wrong folder, and the sheet in the wrong language.",
        '"Language: de\\n" in locales/fr',
        "Move the file to the folder of its language, or correct its header.",
    ),
    Rule(
        "PO-15", "many-faults", S1,
        "A file has more faults than are told one by one.",
        "It is probably no PO file, or was saved by a programme that spoiled it.",
        "a spreadsheet saved as content.po",
        "Mend the faults that are told, or put back the last good file; then check again.",
    ),
)  # fmt: skip

RULES = (*_COVERAGE, *HYGIENE, *MEANING, *_CATALOGUE_FILE)
"""Every rule, in the order of the codes."""

RULE_OF = {rule.code: rule for rule in RULES}
