"""The rules about what a text means: held against what its step does and against its source text."""

from __future__ import annotations

from signage.ground.rule import S1, S2, S3, Rule

MEANING = (
    Rule(
        "WD-40", "opposite-verb", S1,
        "A headline, the title of a phase or the detail of hand hygiene carries an approved form of the "
        "opposite of what its step does, and none of its own; or a translation carries the opposite of a "
        "verb of its source text. The verbs stand in terms.yaml, under 'verbs'.",
        "The picture shows one act and the words tell the other; whoever reads does the wrong one.",
        "'Retirer les gants' (take off) at a step with 'do: don'; 'Wash both hands' at 'agent: rub'",
        "Write the verb that the step does. If the text is right, correct the step or the list of verbs.",
    ),
    Rule(
        "WD-41", "no-approved-verb", S2,
        "A headline carries no approved form of what its step does.",
        "One act by one word: readers learn the word with the picture, and a word that nobody has "
        "approved may be the opposite.",
        "'Les gants externes' at a step with 'do: don', where terms.yaml approves enfiler and mettre",
        "Use an approved form; or add yours under 'verbs' in terms.yaml when the owner of the words agrees.",
    ),
    Rule(
        "WD-42", "other-hand-layer", S1,
        "Headline or detail of hand hygiene name another hand layer than the 'layer' of the step.",
        "Hands stay dirty where the wrong layer is cleaned.",
        "text: Rub both hands, with layer: inner-gloves",
        "Name the layer that the step cleans, or correct 'layer'.",
    ),
    Rule(
        "WD-43", "hand-layer-in-detail", S2,
        "The detail of hand hygiene speaks of bare hands where a glove is cleaned, or of gloves for skin.",
        "Headline and detail contradict each other.",
        "detail: Every part of both hands, with layer: outer-gloves",
        "Say in the detail what the step cleans.",
    ),
    Rule(
        "WD-44", "lost-negation", S1,
        "The source text of a headline, a caution, a rule, a step with 'negation: yes' or a fixed sentence "
        "that warns, such as the one of drafts, denies, forbids or keeps something away; the translation has "
        "no word that does. The words stand in terms.yaml, under 'negation'.",
        "'Do not touch' becomes 'touch'.",
        "'Mains près du visage' for 'Hands away from the face'",
        "Say no where the source text does; add the word to 'negation' if it says so by one not listed.",
    ),
    Rule(
        "WD-45", "lost-negation-in-explanation", S2,
        "Another text whose source denies something has no word that does; or a sentence denies two things "
        "and its translation only one.",
        "An explanation turned round teaches the wrong reason.",
        "'La peau doit toucher le liquide' for 'Skin must not meet the spill'",
        "Say no where the source text does; add the word to 'negation' if it says so by one not listed.",
    ),
    Rule(
        "WD-46", "forbidden-act", S1,
        "The translation says no to an act that the source text asks for: both name it by an approved verb, "
        "only the translation has a word of negation.",
        "The reader leaves out the step.",
        "'Ne pas retirer les gants' for 'Take off gloves'",
        "Take the negation out.",
    ),
    Rule(
        "WD-47", "unmarked-negation", S3,
        "Headline, detail or caution of a step forbid something or keep it away, and the step lacks "
        "'negation: yes'.",
        "The mark tells translators to keep the 'not', and makes its loss grave.",
        "caution: Do not touch the front, without negation: yes",
        "Add 'negation: yes' to the step.",
    ),
    Rule(
        "WD-48", "lost-restriction", S2,
        "The source text says 'only', the translation has no such word. The words stand in terms.yaml, under "
        "'restriction'.",
        "'Touch only the straps' becomes 'touch the straps', and the front may be touched too.",
        "'Toucher l’élastique' for 'Touch only the strap'",
        "Say 'only' in the translation; add the word to 'restriction' if it says so by one not listed.",
    ),
    Rule(
        "WD-49", "added-negation", S2,
        "The translation has a word of negation, the source text has none and no word that another language "
        "often puts with one.",
        "A 'not' that slipped in turns a sentence round.",
        "'Les gants n’apportent pas la saleté' for 'The gloves bring dirt'",
        "Take the negation out, or say the same without it.",
    ),
    Rule(
        "WD-50", "other-bin", S1,
        "A text names a bin by another code than that of the step's bin, or by one that no bin of the ward "
        "carries.",
        "The icon shows one bin and the words another; soiled kit lands where clean kit is taken from.",
        "detail: Drop it into bin Z, with bin: bin-y",
        "Write {bin} in place of the code, or correct 'bin'.",
    ),
    Rule(
        "WD-51", "other-time", S1,
        "A text names a time, in figures or in words, that is not the step's.",
        "Germs need the time that policy gives; the sheet shows two.",
        "detail: Rub for sixty seconds, with seconds: 20",
        "Write {time} in place of the time, or correct 'seconds'.",
    ),
    Rule(
        "WD-52", "typed-time", S3,
        "A text types the time that the step gives.",
        "The day the policy changes, the words stay behind.",
        "detail: Rub for 20 s, with seconds: 20",
        "Write {time} in place of the time.",
    ),
    Rule(
        "WD-53", "other-number", S2,
        "A translation spells out a number that its source text does not hold.",
        "Digits are compared already; a wrong number is no better in words.",
        "'trois fois' for 'twice'",
        "Write the number of the source text, or the placeholder that stands for it.",
    ),
    Rule(
        "WD-54", "other-zone", S2,
        "The headline of a step that moves names another zone than the one it goes to.",
        "Somebody in soiled kit walks the wrong way.",
        "text: Go to the corridor, with to: dirty-side",
        "Name the zone that the step goes to, or correct 'to'.",
    ),
    Rule(
        "WD-57", "other-garment-in-headline", S1,
        "The headline of a step that puts on, takes off or cleans hands names another garment than the "
        "step's, and not the step's own.",
        "Whoever reads only the headline takes off the wrong layer.",
        "'Take off inner gloves' at a step with 'do: doff' and 'item: outer-gloves'",
        "Name the garment of the step, or correct 'item'.",
    ),
    Rule(
        "WD-55", "text-of-another-step", S2,
        "One translation stands for two source texts that say different things.",
        "It was copied to the wrong entry, most likely.",
        "'Retirer la cagoule' at the steps for hood and for goggles",
        "Translate the text that stands at this entry.",
    ),
    Rule(
        "WD-56", "verbs-without-forms", S3,
        "A locale has no approved forms for some verbs of terms.yaml, or the file lists no verbs at all, so "
        "that nobody looks whether headlines say what the steps do.",
        "Put on and take off can change places unseen.",
        "verbs with en and fr, in a library with pt",
        "Add the forms of the language under 'approved' of each verb. A library without verbs takes the "
        "sections from the terms.yaml that 'signage start' writes.",
    ),
    Rule(
        "WD-58", "headline-as-sentence", S3,
        "A headline of the source language holds more than one sentence, or ends with a full stop where most "
        "headlines of the library do not.",
        "A headline is one act in a few words; a detail may stand in its place.",
        "text: Break the neck loop. Roll it downwards.",
        "Say the one act without a full stop, and move the rest into 'detail'.",
    ),
    Rule(
        "WD-59", "mark-without-negation", S2,
        "A step has 'negation: yes', and neither headline nor detail nor caution denies anything.",
        "Either the 'not' was lost from the text, which then asks for what it should forbid, or the mark is "
        "a leftover and misleads translators.",
        "detail: Hands near the face, with negation: yes",
        "Write the 'not' again, or take the mark away.",
    ),
    Rule(
        "WD-60", "headline-of-another-step", S2,
        "Two steps share a headline, show different pictures and do different things; where 'do' tells "
        "nothing of them, as 'say' does, their details share no word.",
        "It was copied to the wrong step, most likely; picture and words contradict each other.",
        "'Take off the hood' at the steps for hood and for goggles",
        "Write the headline of what the step does.",
    ),
)  # fmt: skip
