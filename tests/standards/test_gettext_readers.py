"""Catalogues as other programmes read them: Babel's PO reader and the GNU gettext tools."""

import gettext
import io
import subprocess

import pytest
from outside_readers import outside
from word_samples import FRENCH, build_library, french_entries, write_po

from signage.model.messages import library_messages
from signage.words.catalogue import CatalogueKind, catalogue_path
from signage.words.po.reader import read_catalogue_file
from signage.words.update import update, write_changes


@pytest.fixture
def updated(tmp_path):
    library = build_library()
    write_po(tmp_path, "fr", CatalogueKind.CONTENT, french_entries(library).values())
    steps = library.protocols["off"].phases[0].steps
    for changed in (build_library(steps=steps[1:]), library):
        write_changes(update(changed, library_messages(changed), tmp_path))
    return catalogue_path(tmp_path, "fr", CatalogueKind.CONTENT)


def test_babel_reads_the_same_texts_flags_and_comments(updated):
    pofile = outside("babel.messages.pofile")
    theirs = pofile.read_po(io.BytesIO(updated.read_bytes()), abort_invalid=True)
    ours = read_catalogue_file(updated, "fr").catalogue
    assert {(m.context, m.id): m.string for m in theirs if m.id} == {
        (entry.context, entry.source): entry.translation for entry in ours.entries
    }
    for entry in ours.entries:
        message = theirs.get(entry.source, entry.context)
        assert message.fuzzy == entry.is_doubtful
        assert tuple(message.auto_comments) == entry.notes
    assert str(theirs.locale) == "fr"
    assert theirs.num_plurals == 3, "one, many for millions, other: the plural rule of CLDR"


def test_the_gettext_tools_compile_the_catalogue_and_python_speaks_it(updated, tmp_path):
    compiled = tmp_path / "content.mo"
    subprocess.run([outside("msgfmt"), "--check-format", "-o", str(compiled), str(updated)], check=True)
    with compiled.open("rb") as stream:
        translations = gettext.GNUTranslations(stream)
    assert translations.pgettext("off/apron-off/text", "Take off the apron.") == FRENCH["off/apron-off/text"]


def test_a_merge_by_the_gettext_tools_is_read_without_loss(updated, tmp_path):
    library = build_library()
    template = tmp_path / "new.pot"
    text = updated.read_text().replace('msgid "Take off the apron."', 'msgid "Take the apron off."')
    template.write_text(text)
    merged = subprocess.run(
        [outside("msgmerge"), "--previous", "--quiet", str(updated), str(template)],
        check=True,
        capture_output=True,
    ).stdout
    updated.write_bytes(merged)
    result = read_catalogue_file(updated, "fr")
    assert result.problems == ()
    entry = result.catalogue.by_context["off/apron-off/text"]
    assert entry.is_stale
    assert (entry.previous, entry.source) == ("Take off the apron.", "Take the apron off.")
    assert entry.translation == FRENCH["off/apron-off/text"]
    write_changes(update(library, library_messages(library), updated.parents[2]))
    assert read_catalogue_file(updated, "fr").catalogue.by_context.keys() == {
        message.context for message in library_messages(library)
    }
