import pytest
from word_samples import FRENCH

from signage.words.catalogue import Catalogue, CatalogueKind, Entry
from signage.words.plural_forms import plural_forms
from signage.words.po.reader import read_catalogue
from signage.words.po.writer import complete_header, write_catalogue

NASTY = 'A "quoted" \\ back\\slash,\ttab,\nnew line, \u2028 separator, हिन्दी, \u2068isolate\u2069, {time}'


def catalogue(*entries, **parts):
    return Catalogue(entries=entries, header=complete_header(CatalogueKind.CONTENT, "fr", {}), **parts)


def test_what_is_written_is_read_back_whole():
    entry = Entry(
        context="a/b",
        source=NASTY,
        translation=NASTY,
        comments=(" remark", "", "no space"),
        notes=("role: headline",),
        references=("x.yaml",),
        flags=("fuzzy", "no-wrap"),
        previous=NASTY,
    )
    written = catalogue(entry, obsolete=(entry,), header_comments=(" head",), closing_comments=(" end",))
    result = read_catalogue(write_catalogue(written), "fr.po", "fr")
    assert result.problems == ()
    assert result.catalogue == written


def test_each_text_stands_on_one_line_so_that_versions_compare_line_by_line():
    entry = Entry(context="a", source="word " * 100, translation="mot\n" * 50)
    lines = write_catalogue(catalogue(entry)).decode().split("\n")
    assert sum(line.startswith("msgstr") for line in lines) == 2
    assert all(line == "" or line[0] in '#m"' for line in lines)


def test_the_header_has_no_date():
    old = {"POT-Creation-Date": "2026-01-01", "PO-Revision-Date": "2026-01-02", "X-Domain": "ward"}
    header = complete_header(CatalogueKind.CONTENT, "fr", old)
    assert not any("Date" in name for name in header)
    assert header["X-Domain"] == "ward"
    assert header["Language"] == "fr"


def test_a_sound_plural_rule_of_the_file_stays_and_a_broken_one_is_replaced():
    usual = (
        "nplurals=6; plural=n==0 ? 0 : n==1 ? 1 : n==2 ? 2 : n%100>=3 && n%100<=10 ? 3 : n%100>=11 ? 4 : 5;"
    )
    kept = complete_header(CatalogueKind.CONTENT, "ar", {"Plural-Forms": usual})
    assert kept["Plural-Forms"] == usual
    for broken in ("nplurals=INTEGER; plural=EXPRESSION;", "nplurals=2; plural=__import__('os')"):
        replaced = complete_header(CatalogueKind.CONTENT, "ar", {"Plural-Forms": broken})
        assert replaced["Plural-Forms"] == plural_forms("ar")


def test_a_template_names_no_language():
    header = complete_header(CatalogueKind.INTERFACE, None, {})
    assert "Language" not in header
    assert "Plural-Forms" not in header


def test_the_order_of_the_entries_is_the_order_of_the_file():
    entries = [Entry(context=context, source="s", translation=text) for context, text in FRENCH.items()]
    result = read_catalogue(write_catalogue(catalogue(*entries)), "fr.po", "fr")
    assert [entry.context for entry in result.catalogue.entries] == list(FRENCH)


@pytest.mark.parametrize("end", ["\n"])
def test_the_file_ends_with_one_line_end(end):
    data = write_catalogue(catalogue(Entry(context="a", source="b")))
    assert data.endswith(b'msgstr ""\n')
    assert b"\r" not in data
