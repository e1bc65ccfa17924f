"""What a text means, held against the demo's steps: each rule fires, and stays silent beside it.

The translations written here are unverified, as those of the demo are.
"""

from dataclasses import replace
from functools import lru_cache

import demo
import pytest

from signage.model.library import Library
from signage.words.catalogue import CatalogueKind, catalogue_path
from signage.words.coverage import fixed_messages
from signage.words.meaning.checks import MeaningCheck
from signage.words.meaning.rules import MEANING
from signage.words.po.reader import read_catalogue_file

LAYERED, ROOM, SPILL, WASTE = "layered-protection", "contact-room", "spill", "waste-out"
LANGUAGES = ("fr", "ar", "hi", "am")


@lru_cache(maxsize=1)
def messages():
    return {message.context: message for message in (*demo.project().messages, *fixed_messages())}


@lru_cache(maxsize=8)
def texts(tag):
    if tag == "en":
        return {context: message.source for context, message in messages().items()}
    path = catalogue_path(demo.ROOT / "locales", tag, CatalogueKind.CONTENT)
    entries = read_catalogue_file(path, tag).catalogue.entries
    return {entry.context: entry.translation for entry in entries if entry.translation}


@lru_cache(maxsize=8)
def check(tag):
    return MeaningCheck(demo.project().library, tag, texts(tag))


def codes(tag, context, text):
    message = messages()[context]
    if context.startswith("interface/"):
        checked = MeaningCheck(demo.project().library, tag, {}, "en")
        return {code for code, _ in checked.faults_of_text(message, text)}
    if tag == "en":
        message = replace(message, source=text)
    return {code for code, _ in check(tag).faults_of_text(message, text)}


FIRES = [
    ("WD-40", "en", f"{LAYERED}/apron-on/text", "Take off the apron"),
    ("WD-40", "en", f"{LAYERED}/apron-off/text", "Put the apron on"),
    ("WD-40", "en", f"{LAYERED}/zip-close/text", "Open the zip"),
    ("WD-40", "en", f"{LAYERED}/wash-hands/text", "Rub both hands"),
    ("WD-40", "en", f"{LAYERED}/rub-after-outer/detail", "Wash for {time}."),
    ("WD-40", "en", f"{LAYERED}/sit-dirty-chair/text", "Stand up from the dirty chair"),
    ("WD-40", "en", f"{ROOM}/go-in/text", "Leave the room"),
    ("WD-40", "en", f"{ROOM}/go-out/text", "Enter the room"),
    ("WD-40", "en", f"{LAYERED}/phase/put-on/title", "Take off"),
    ("WD-40", "fr", "gone-wrong/begin-take-off/text", "Commencer à enfiler"),
    ("WD-40", "ar", f"{LAYERED}/phase/take-off/note/clean-side", "الكمامة التنفسية تُلبس في هذه الجهة فقط."),
    ("WD-41", "en", f"{LAYERED}/apron-on/text", "The apron"),
    ("WD-41", "hi", f"{LAYERED}/hood-off/text", "हुड छुएँ"),
    ("WD-42", "en", f"{LAYERED}/rub-after-outer/text", "Rub both hands"),
    ("WD-42", "en", f"{LAYERED}/rub-after-outer/text", "Rub outer gloves"),
    ("WD-42", "en", f"{LAYERED}/rub-bare-hands/text", "Rub inner gloves"),
    ("WD-42", "en", f"{LAYERED}/rub-after-outer/detail", "{time}, every part of the outer gloves."),
    ("WD-42", "am", f"{LAYERED}/rub-after-outer/text", "የውጭ ጓንት ይሹ"),
    ("WD-43", "en", f"{LAYERED}/rub-after-outer/detail", "{time}, every part of both hands."),
    ("WD-43", "fr", f"{LAYERED}/rub-bare-hands/detail", "{time} sur toute la surface des gants."),
    ("WD-44", "fr", "gone-wrong/hands-down/text", "Mains sur le visage"),
    ("WD-44", "hi", f"{LAYERED}/zip-open/caution", "उँगलियाँ गर्दन पर रखें।"),
    ("WD-45", "fr", f"{SPILL}/gloves-on/why", "La peau doit toucher le liquide."),
    ("WD-44", "hi", "interface/draft-sentence", "मसौदा। इलाज में उपयोग के लिए।"),
    ("WD-45", "am", "interface/page-why-place", "ለዚህ በትክክለኛው ቦታ ነዎት።"),
    ("WD-45", "fr", "interface/trial-guide-help", "Ne montrez rien. N’aidez pas et dites si c’est juste."),
    ("WD-45", "fr", "picture/observer-check", "Un observateur regarde une personne et la touche."),
    ("WD-44", "fr", f"{SPILL}/ready-disinfectant/caution", "L’utiliser seul. Avec étiquette, demander."),
    ("WD-46", "ar", f"{LAYERED}/apron-off/text", "لا تخلع المريلة"),
    ("WD-46", "am", f"{LAYERED}/hood-off/text", "የራስ መከላከያ ሽፋን አያውልቁ"),
    ("WD-47", "en", f"{LAYERED}/goggles-off/caution", "Do not touch the glass."),
    ("WD-48", "fr", f"{LAYERED}/goggles-off/caution", "Toucher l’élastique."),
    ("WD-48", "ar", f"{LAYERED}/coverall-off/caution", "ببطء. المس الداخل."),
    ("WD-48", "am", "interface/if-torn", "ከተቀደደ"),
    ("WD-49", "hi", f"{LAYERED}/to-dirty-side/why", "किट एक ही जगह, डिब्बों के पास नहीं उतरती।"),
    ("WD-50", "en", f"{LAYERED}/apron-off/detail", "Break the neck loop. Drop it into bin B."),
    ("WD-50", "en", f"{LAYERED}/phase/take-off/rule", "Soiled? Bin Z stands at the door."),
    ("WD-50", "fr", f"{LAYERED}/apron-off/detail", "Rouler vers le bas, au bac R."),
    ("WD-50", "ar", f"{LAYERED}/apron-off/detail", "لفّها إلى الأسفل، السلة G."),
    ("WD-51", "en", f"{LAYERED}/rub-bare-hands/detail", "Sixty seconds, wrists as well."),
    ("WD-51", "fr", f"{LAYERED}/rub-bare-hands/detail", "Deux minutes, poignets compris."),
    ("WD-51", "hi", f"{LAYERED}/rub-bare-hands/detail", "{time} तक, साठ सेकंड। सूखने दें।"),
    ("WD-52", "en", f"{LAYERED}/rub-bare-hands/detail", "20 s, wrists as well."),
    ("WD-53", "fr", f"{LAYERED}/hood-off/detail", "Se pencher trois fois, yeux fermés."),
    ("WD-54", "en", f"{LAYERED}/to-dirty-side/text", "Go to the corridor"),
    ("WD-54", "fr", f"{LAYERED}/to-clean-side/text", "Passer côté sale"),
    ("WD-57", "en", f"{LAYERED}/outer-gloves-off/text", "Take off inner gloves"),
    ("WD-57", "en", f"{LAYERED}/goggles-off/text", "Take off the hood"),
    ("WD-57", "fr", f"{LAYERED}/outer-gloves-off/text", "Retirer les gants internes"),
    ("WD-57", "hi", f"{LAYERED}/inner-gloves-on/text", "बाहरी दस्ताने पहनें"),
    ("WD-57", "am", f"{LAYERED}/outer-gloves-off/text", "የውስጥ ጓንት ያውልቁ"),
]

SILENT = [
    ("en", f"{LAYERED}/apron-on/text", "Apron on"),
    ("en", f"{LAYERED}/apron-off/text", "Peel the apron off"),
    ("en", f"{LAYERED}/apron-off/why", "It goes into bin A, never into bin B."),
    ("en", f"{LAYERED}/rub-bare-hands/detail", "Rub for {time}, then let them dry for 10 s."),
    ("en", f"{LAYERED}/rub-after-outer/detail", "The inner gloves, every part, for {time}."),
    ("en", f"{ROOM}/go-in/text", "Leave the corridor"),
    ("en", f"{LAYERED}/to-corridor/text", "Enter the corridor"),
    ("en", "clean-hands/palms/text", "Palm on palm"),
    ("en", f"{LAYERED}/outer-gloves-off/text", "Take off the outer gloves, inner gloves stay"),
    ("en", f"{LAYERED}/outer-gloves-off/text", "Take off the first gloves"),
    ("fr", "interface/page-unsafe", "Dangereux."),
    ("ar", "interface/if-soiled", "عند الاتساخ فقط"),
    ("fr", f"{LAYERED}/outer-gloves-off/detail", "Un gant dans l’autre. Ne pas retirer les gants internes."),
    ("fr", f"{LAYERED}/goggles-off/caution", "Ne toucher que l’élastique."),
    ("fr", f"{SPILL}/ready-disinfectant/caution", "Ne pas mélanger. Sans étiquette, demander à l’infirmier."),
    ("fr", f"{LAYERED}/to-dirty-side/why", "La tenue s’ôte sans danger ici, près des bacs."),
    ("ar", f"{LAYERED}/goggles-off/caution", "لا تلمس إلا الشريط."),
    ("ar", f"{LAYERED}/to-dirty-side/text", "اذهب إلى الجهة الملوثة"),
    ("hi", f"{LAYERED}/to-corridor/text", "गलियारे में प्रवेश करें"),
    ("hi", f"{LAYERED}/goggles-off/caution", "पट्टी के सिवा कुछ न छुएँ।"),
    ("am", f"{LAYERED}/goggles-off/caution", "ከማሰሪያው በስተቀር ምንም አይንኩ።"),
]


def test_each_rule_fires_where_words_and_step_part():
    for code, tag, context, text in FIRES:
        assert code in codes(tag, context, text), (code, tag, context, text)


def test_no_rule_fires_on_other_words_for_the_same():
    for tag, context, text in SILENT:
        assert codes(tag, context, text) == set(), (tag, context, text)


def test_the_demo_means_what_its_steps_do():
    for tag in ("en", *LANGUAGES):
        for context, text in texts(tag).items():
            if context in messages():
                assert codes(tag, context, text) == set(), (tag, context, text)
        assert not list(check(tag).faults_of_locale())
        assert not list(check(tag).faults_across_texts(list(messages().values())))


SWAPS = {
    "en": (("Put on", "Take off"), ("Open the zip", "Close the zip")),
    "fr": (("Retirer", "Enfiler"), ("Mettre", "Ôter"), ("Enfiler", "Retirer"), ("Ouvrir", "Fermer")),
    "ar": (("اخلع", "البس"), ("البس", "اخلع"), ("افتح", "أغلق"), ("أغلق", "افتح")),
    "hi": (("उतारें", "पहनें"), ("पहनें", "उतारें"), ("खोलें", "बंद करें")),
    "am": (("ያውልቁ", "ያድርጉ"), ("ያድርጉ", "ያውልቁ"), ("ይልበሱ", "ያውልቁ"), ("ይክፈቱ", "ይዝጉ")),
}
DRESSING = {"don", "doff", "fasten", "unfasten"}


def test_putting_on_and_taking_off_never_change_places_unseen():
    library = demo.project().library
    for tag, pairs in SWAPS.items():
        changed = 0
        for protocol in library.protocols.values():
            for step in protocol.steps:
                context = f"{protocol.id}/{step.told_as}/text"
                for old, new in pairs:
                    text = texts(tag)[context]
                    if step.action.verb in DRESSING and old in text:
                        changed += 1
                        assert "WD-40" in codes(tag, context, text.replace(old, new)), (tag, context, new)
        assert changed >= 16, tag


def test_the_text_of_another_step_is_found_and_so_is_its_owner():
    swapped = {**texts("fr"), f"{LAYERED}/hood-off/detail": texts("fr")[f"{LAYERED}/zip-open/detail"]}
    spoiled = MeaningCheck(demo.project().library, "fr", swapped)
    found = list(spoiled.faults_across_texts(list(messages().values())))
    assert {(message.context, fault[0]) for message, fault in found} == {
        (f"{LAYERED}/hood-off/detail", "WD-55"),
        (f"{LAYERED}/zip-open/detail", "WD-55"),
    }


def test_a_language_without_verbs_gets_one_finding_and_no_other_of_them():
    library = demo.project().library
    foreign = MeaningCheck(library, "pt", {})
    ((code, found),) = foreign.faults_of_locale()
    assert code == "WD-56"
    assert "pt has no approved forms of put-on, take-off" in found
    message = messages()[f"{LAYERED}/apron-off/text"]
    assert list(foreign.faults_of_text(message, "Vestir o avental")) == []


@pytest.fixture
def bare_library():
    return replace(demo.project().library, vocabulary=type(demo.project().library.vocabulary)())


def test_a_library_without_verbs_is_judged_by_bins_times_and_zones_alone(bare_library: Library):
    bare = MeaningCheck(bare_library, "en", texts("en"))
    assert [code for code, _ in bare.faults_of_locale()] == ["WD-56"]
    assert not list(MeaningCheck(bare_library, "fr", texts("fr")).faults_of_locale())
    turned = replace(messages()[f"{LAYERED}/apron-off/text"], source="Put on the apron")
    assert list(bare.faults_of_text(turned, turned.source)) == []
    timed = replace(messages()[f"{LAYERED}/rub-bare-hands/detail"], source="Rub for 60 s.")
    assert [code for code, _ in bare.faults_of_text(timed, timed.source)] == ["WD-51"]


def test_every_rule_of_meaning_has_a_fault_here():
    in_the_source = {"WD-58", "WD-59", "WD-60"}  # tests of source_checks
    here = {code for code, *_ in FIRES} | {"WD-55", "WD-56"} | in_the_source
    assert here == {rule.code for rule in MEANING}
