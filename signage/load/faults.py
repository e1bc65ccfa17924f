"""The faults that content files can have, each with its code, its reason and its cure."""

from __future__ import annotations

from signage.ground.rule import S1, Rule

UNREADABLE_FILE = Rule(
    "LD-1",
    "unreadable-file",
    S1,
    "A file or folder of the content is missing, is not a file, or may not be read.",
    "A library that is read in part would print sheets that lack steps.",
    "content/kit.yaml is a folder",
    "Put the file there, or give yourself the right to read it.",
)
TOO_LARGE = Rule(
    "LD-2",
    "too-large",
    S1,
    "A content file is larger than 2 MB.",
    "Content is text that people write; a file of this size is something else.",
    "a video saved as content/kit.yaml",
    "Move out of the file what is not content, or split it into several files.",
)
NOT_UTF_8 = Rule(
    "LD-3",
    "not-utf-8",
    S1,
    "The bytes of a file are not UTF-8 text.",
    "In another encoding an accented or non-Latin letter would be read as a different one.",
    "a file saved as Windows-1252 or UTF-16",
    "Save the file as UTF-8 without BOM.",
)
BYTE_ORDER_MARK = Rule(
    "LD-4",
    "byte-order-mark",
    S1,
    "A file begins with the invisible mark U+FEFF.",
    "The mark becomes part of the first key in programmes that do not expect it.",
    "a file saved as 'UTF-8 with BOM'",
    "Save the file as UTF-8 without BOM.",
)
FORBIDDEN_CHARACTER = Rule(
    "LD-5",
    "forbidden-character",
    S1,
    "A control character, an invisible line separator or a direction override stands in a file.",
    "Such characters are unseen in an editor and change what is printed; overrides reverse words.",
    "U+202E in a step text",
    "Delete the character; the programme sets the direction of text itself.",
)
TAB_INDENT = Rule(
    "LD-6",
    "tab-indent",
    S1,
    "A line is indented with a tab.",
    "How far a tab reaches differs between editors, so what belongs to what is unclear.",
    "a tab before 'text:'",
    "Indent with spaces only.",
)
EMPTY_FILE = Rule(
    "LD-7",
    "empty-file",
    S1,
    "A file holds nothing but spaces or comments.",
    "A needed part of the library would be absent without notice.",
    "content/policy.yaml with 0 bytes",
    "Write the content, or delete the file if it is not needed.",
)
NOT_YAML = Rule(
    "LD-8",
    "not-yaml",
    S1,
    "A line does not follow the rules of YAML.",
    "What cannot be read with certainty is not guessed at.",
    "text: Stop: wait",
    "Look at the indentation, the colons and the quotes of this line and of the line above.",
)
REPEATED_KEY = Rule(
    "LD-9",
    "repeated-key",
    S1,
    "A key or an identifier stands twice where it may stand once.",
    "One of the two values would be dropped unseen.",
    "two lines 'seconds:' in one step",
    "Keep one of the two.",
)
REFUSED_YAML = Rule(
    "LD-10",
    "refused-yaml",
    S1,
    "A feature of YAML is used that content files do without: anchor, alias, tag, a second document.",
    "With these features a small file can grow without bound, and one change reaches far places.",
    "why: *same-reason",
    "Write the value out in full.",
)
UNKNOWN_KEY = Rule(
    "LD-11",
    "unknown-key",
    S1,
    "A key is not one of those that may stand there.",
    "A misspelt key would be ignored, and what it says would not be printed or checked.",
    "pciture: hand-rub",
    "Correct the key or delete the line.",
)
MISSING_KEY = Rule(
    "LD-12",
    "missing-key",
    S1,
    "A key that is needed is not there.",
    "The programme does not choose values for you.",
    "a step without 'picture:'",
    "Add the key with its value.",
)
WRONG_KIND = Rule(
    "LD-13",
    "wrong-kind",
    S1,
    "A value is not of the kind that its key wants: text, list, number, length, date, yes or no.",
    "A value of another kind would be read as something the author did not mean.",
    "seconds: twenty",
    "Write a value of the kind that is wanted.",
)
UNKNOWN_WORD = Rule(
    "LD-14",
    "unknown-word",
    S1,
    "A value is not one of the words that its key knows.",
    "The rehearsal reasons with these words; another word would switch off a rule.",
    "floor: dirtyy",
    "Use one of the known words.",
)
MALFORMED_NAME = Rule(
    "LD-15",
    "malformed-name",
    S1,
    "An identifier, a code or a language tag is not written in its form.",
    "Identifiers become parts of file names and of translation catalogues.",
    "step: Rub_Hands",
    "Use lower-case letters a to z, digits and single hyphens, beginning with a letter.",
)
UNKNOWN_REFERENCE = Rule(
    "LD-16",
    "unknown-reference",
    S1,
    "A value names something that is declared nowhere.",
    "The step could not be rehearsed or drawn.",
    "bin: bin-z",
    "Correct the name, or declare what it names.",
)
WRONG_REFERENCE = Rule(
    "LD-17",
    "wrong-reference",
    S1,
    "A value names something of another kind than its key wants.",
    "A chair that is named as a bin cannot take waste.",
    "bin: dirty-chair",
    "Name something of the kind that is wanted.",
)
MISFIT_KEY = Rule(
    "LD-18",
    "misfit-key",
    S1,
    "A key of an action says nothing to its verb, or a verb lacks a key that it needs.",
    "The author believes that the key has an effect, and it has none.",
    "do: stand with chair: dirty-chair",
    "Delete the key, or choose the verb that uses it.",
)
PLACEHOLDER = Rule(
    "LD-19",
    "placeholder",
    S1,
    "A text holds a placeholder in braces that is unknown or that nothing can fill.",
    "The sheet would show braces where a number or a name belongs.",
    "Rub for {time}. in a step without seconds",
    "Give the action the value, or write the words out.",
)
UNKNOWN_PICTURE = Rule(
    "LD-20",
    "unknown-picture",
    S1,
    "A picture is named that does not exist.",
    "A step without its picture cannot be followed by somebody who does not read the language.",
    "picture: hand-rubb",
    "Use the name of an existing picture.",
)

UNEXPECTED_FILE = Rule(
    "LD-21",
    "unexpected-file",
    S1,
    "A YAML file of the content has a name that is not read.",
    "A misspelt file name would leave out a protocol or a ward without notice.",
    "content/protocols/spill.yml",
    "Give the file a name that is read, or move it out of the content.",
)

UNWAIVABLE = Rule(
    "LD-22",
    "unwaivable",
    S1,
    "A waiver names a rule whose findings have severity S1.",
    "They can hurt somebody; nobody has the right to accept them.",
    "code: WD-40 in waivers.yaml",
    "Mend the finding, and delete the waiver.",
)

RULES: tuple[Rule, ...] = (
    UNREADABLE_FILE, TOO_LARGE, NOT_UTF_8, BYTE_ORDER_MARK, FORBIDDEN_CHARACTER, TAB_INDENT, EMPTY_FILE,
    NOT_YAML, REPEATED_KEY, REFUSED_YAML, UNKNOWN_KEY, MISSING_KEY, WRONG_KIND, UNKNOWN_WORD, MALFORMED_NAME,
    UNKNOWN_REFERENCE, WRONG_REFERENCE, MISFIT_KEY, PLACEHOLDER, UNKNOWN_PICTURE,
    UNEXPECTED_FILE, UNWAIVABLE,
)  # fmt: skip
"""Every fault in the order of its code, for explanations."""
