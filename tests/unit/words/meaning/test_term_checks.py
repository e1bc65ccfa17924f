"""The glossary of the demo tells names that lead astray, and is silent about those that the demo now uses.

What the former names mean to a ward is common practice, no source; all translations are unverified.
"""

import demo

from signage.load.starter import starter_files
from signage.project import open_project
from signage.words.catalogue import CatalogueKind, catalogue_path
from signage.words.meaning.term_checks import TermCheck
from signage.words.po.reader import read_catalogue_file

LAYERED = "layered-protection"
LEADS_ASTRAY = [
    ("fr", LAYERED, "goggles-on", "Mettre les lunettes"),
    ("hi", LAYERED, "goggles-off", "गॉगल्स उतारें"),
    ("hi", LAYERED, "goggles-on", "धूप का चश्मा पहनें"),
    ("hi", LAYERED, "boot-covers-on", "जूतों के कवर पहनें"),
    ("ar", LAYERED, "boot-covers-off", "اخلع غطاء الحذاء"),
    ("ar", LAYERED, "hood-off", "اخلع غطاء الرأس"),
    ("ar", "waste-out", "tie-swan-neck", "اربط عنق البجعة"),
    ("am", LAYERED, "boot-covers-on", "የጫማ መሸፈኛ ያድርጉ"),
    ("am", LAYERED, "hood-off", "የራስ መሸፈኛ ያውልቁ"),
    ("am", LAYERED, "respirator-on", "የመተንፈሻ ጭንብል ያድርጉ"),
    ("am", LAYERED, "to-dirty-side", "ወደ ቆሻሻው ጎን ይግቡ"),
]


def test_names_of_other_things_are_told_and_those_of_the_demo_are_not():
    """Ordinary glasses, sunglasses, a shoe cover, a headscarf, a bird, an oxygen mask, a rubbish corner."""
    project = demo.project()
    messages = {message.context: message for message in project.messages}
    for tag, protocol, step_id, astray in LEADS_ASTRAY:
        check = TermCheck(project.library, tag)
        step = next(step for step in project.library.protocols[protocol].steps if step.id == step_id)
        context = f"{protocol}/{step_id}/text"
        path = catalogue_path(demo.ROOT / "locales", tag, CatalogueKind.CONTENT)
        present = {
            each.context: each.translation for each in read_catalogue_file(path, tag).catalogue.entries
        }
        codes = {code for code, _ in check.faults_of_text(messages[context], astray, step)}
        assert {"WD-8", "WD-9"} <= codes, (tag, astray, codes)
        assert not list(check.faults_of_text(messages[context], present[context], step)), (tag, context)


def test_french_writes_one_apostrophe():
    """U+2019, preferred for the apostrophe by The Unicode Standard (6.2, Apostrophes)."""
    for kind in CatalogueKind:
        path = catalogue_path(demo.ROOT / "locales", "fr", kind)
        texts = [each.translation for each in read_catalogue_file(path, "fr").catalogue.entries]
        assert not [text for text in texts if "'" in str(text)]
        assert any("’" in str(text) for text in texts)


def test_a_new_library_tells_another_word_than_the_one_under_the_letter_of_a_bin(tmp_path):
    """The sheets say 'bac' under the letter; 'poubelle' in a text beside it names something else."""
    for name, data in starter_files().items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    project = open_project(tmp_path / "content", tmp_path / "locales")
    (message,) = (each for each in project.messages if "bin {bin}" in each.source)
    step = next(each for each in project.library.protocols["gloves"].steps if each.id == message.step)
    check = TermCheck(project.library, "fr")
    told = {code for code, _ in check.faults_of_text(message, "Les jeter dans la poubelle {bin}.", step)}
    assert "WD-8" in told
    assert not list(check.faults_of_text(message, "Les jeter dans le bac {bin}.", step))
