"""PO files of any bytes: the reader and all that stands on it raise none but the programme's own errors."""

import contextlib
from unicodedata import normalize

from hypothesis import example, given, settings
from hypothesis import strategies as st
from word_samples import build_library, french_entries, write_po

from signage.ground.errors import SignageError
from signage.model.messages import library_messages
from signage.text.font_set import BUNDLED_FONTS
from signage.words.catalogue import Catalogue, CatalogueKind, Entry
from signage.words.coverage import coverage_problems
from signage.words.marks import is_mark
from signage.words.po.reader import read_catalogue
from signage.words.po.writer import complete_header, write_catalogue
from signage.words.update import merge, progress, update
from signage.words.wording import open_wording

LIBRARY = build_library()
MESSAGES = library_messages(LIBRARY)
VALID = write_catalogue(
    Catalogue(
        entries=tuple(french_entries(LIBRARY).values()),
        header=complete_header(CatalogueKind.CONTENT, "fr", {}),
        obsolete=(Entry(context="gone", source="Gone.", translation="Parti.", comments=(" remark",)),),
    )
)
FRAGMENTS = [
    b'"',
    b"\\",
    b"\n",
    b"msgid ",
    b"msgstr[1]",
    b"#~ ",
    b"#| ",
    b"#,",
    b"\xff",
    b"\xe2\x80\xae",
    b"{",
    b"\x00",
]
HARMLESS = [b"a", b"\xc3\xa9", b" ", b"\\n", b'"\n"', b"\n\n", b"\n# remark\n", b"\n#, fuzzy\n"]
PIECES = [
    b'msgctxt "a"\n',
    b'msgid "b"\n',
    b'msgstr "c"\n',
    b'"d"\n',
    b"#, fuzzy\n",
    b'#| msgid "e"\n',
    b'#~ msgid "f"\n',
    b'#~ msgstr ""\n',
    b"# checked: x 2026-02-30\n",
    b"\n",
    b'msgid ""\n',
    b'msgid_plural "g"\n',
    b"#\n",
]

mutations = st.lists(
    st.tuples(
        st.integers(0, len(VALID)),
        st.integers(0, 12),
        st.one_of(st.sampled_from(FRAGMENTS), st.sampled_from(HARMLESS), st.binary(max_size=6)),
    ),
    min_size=1,
    max_size=6,
)


def mutated(changes):
    data = VALID
    for start, length, new in changes:
        data = data[:start] + new + data[start + length :]
    return data


def is_placed(problem):
    return problem.place.path == "x.po" and problem.locale == "fr" and problem.message and problem.hint


@given(st.one_of(st.binary(max_size=300), st.lists(st.sampled_from(PIECES), max_size=14).map(b"".join)))
@example(b"")
@example(b'msgid ""\nmsgstr ""\n"Content-Type: text/plain; charset=\\n"')
def test_any_bytes_give_a_catalogue_or_placed_problems(data):
    result = read_catalogue(data, "x.po", "fr")
    assert all(is_placed(problem) for problem in result.problems)
    assert all(problem.place.line <= data.count(b"\n") + 1 for problem in result.problems)


texts = st.text(
    st.characters(
        exclude_categories=["Cs", "Cc"],
        exclude_characters="\u202a\u202b\u202c\u202d\u202e",
        include_characters="\n\t",
    ),
    max_size=12,
)
remarks = st.lists(st.text("ab :12-(é", max_size=9).map(lambda text: f" {text}".rstrip()), max_size=2).map(
    tuple
)
CONTEXTS = [*(message.context for message in MESSAGES[:4]), "gone/a", "gone/b"]
entries = st.builds(
    Entry,
    context=st.sampled_from(CONTEXTS),
    source=st.one_of(texts.filter(bool), st.sampled_from([message.source for message in MESSAGES[:4]])),
    translation=texts,
    comments=st.one_of(remarks, st.just((" checked: b 2026-11-26",))),
    flags=st.sampled_from([(), ("fuzzy",), ("no-wrap", "fuzzy")]),
    previous=st.none() | texts,
)
catalogues = st.builds(
    Catalogue,
    entries=st.lists(entries, max_size=4, unique_by=lambda entry: entry.context).map(tuple),
    obsolete=st.lists(entries, max_size=3).map(tuple),
    header=st.just(complete_header(CatalogueKind.CONTENT, "fr", {})),
    closing_comments=remarks,
)


@given(catalogues)
def test_what_is_written_is_read_back_whole(catalogue):
    result = read_catalogue(write_catalogue(catalogue), "x.po", "fr")
    assert result.problems == ()
    assert result.catalogue == catalogue


@given(catalogues)
def test_merging_loses_no_translation_and_no_remark_and_settles_at_once(catalogue):
    wanted = {m.context: Entry(context=m.context, source=m.source) for m in MESSAGES}
    once = merge(catalogue, wanted, CatalogueKind.CONTENT, "fr")
    assert merge(once, wanted, CatalogueKind.CONTENT, "fr") == once
    assert write_catalogue(merge(once, wanted, CatalogueKind.CONTENT, "fr")) == write_catalogue(once)
    before, after = ((*c.entries, *c.obsolete) for c in (catalogue, once))
    after = tuple(after)
    kept = {normalize("NFC", entry.translation) for entry in after} | {""}
    assert {normalize("NFC", entry.translation) for entry in before} <= kept
    remarks_kept = {comment for entry in after for comment in entry.comments}
    for entry in (*catalogue.entries, *catalogue.obsolete):
        assert {comment for comment in entry.comments if not is_mark(comment)} <= remarks_kept


@given(mutations)
@settings(max_examples=40)
def test_everything_that_reads_catalogues_raises_only_own_errors(tmp_path_factory, changes):
    folder = tmp_path_factory.mktemp("locales")
    write_po(folder, "fr", CatalogueKind.CONTENT, ()).write_bytes(mutated(changes))
    list(coverage_problems(LIBRARY, MESSAGES, folder, BUNDLED_FONTS))
    for read in (update, progress):
        with contextlib.suppress(SignageError):
            read(LIBRARY, MESSAGES, folder)
    with contextlib.suppress(SignageError):
        open_wording(LIBRARY, MESSAGES, folder, "fr", BUNDLED_FONTS)
