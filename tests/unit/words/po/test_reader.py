from time import process_time

import pytest

from signage.ground.place import Place
from signage.words.po.lines import LARGEST_FILE
from signage.words.po.reader import read_catalogue, read_catalogue_file
from signage.words.rules import RULES

HEADER = 'msgid ""\nmsgstr ""\n"Language: fr\\n"\n"Content-Type: text/plain; charset=UTF-8\\n"\n\n'
ENTRY = 'msgctxt "a/b"\nmsgid "Stand up."\nmsgstr "Se lever."\n'


def read(text, tag="fr"):
    data = text if isinstance(text, bytes) else text.encode()
    return read_catalogue(data, "fr.po", tag)


def found(text):
    return [(problem.code, str(problem.place)) for problem in read(text).problems]


def test_an_entry_is_read_with_all_its_parts():
    text = HEADER + (
        "# origin: machine\n#. role: headline\n#: steps.yaml\n#, fuzzy, no-wrap\n"
        '#| msgid "Stand."\nmsgctxt "a/b"\nmsgid "Stand "\n"up."\nmsgstr ""\n"Se \\"lever\\"\\n."\n'
    )
    result = read(text)
    (entry,) = result.catalogue.entries
    assert result.problems == ()
    assert entry.comments == (" origin: machine",)
    assert entry.notes == ("role: headline",)
    assert entry.references == ("steps.yaml",)
    assert entry.flags == ("fuzzy", "no-wrap")
    assert (entry.previous, entry.context, entry.source) == ("Stand.", "a/b", "Stand up.")
    assert entry.translation == 'Se "lever"\n.'
    assert entry.place == Place("fr.po", 11)


def test_entries_need_no_blank_line_between_them():
    text = HEADER + ENTRY + ENTRY.replace("a/b", "a/c") + "# remark\n" + ENTRY.replace("a/b", "a/d")
    result = read(text)
    assert [entry.context for entry in result.catalogue.entries] == ["a/b", "a/c", "a/d"]
    assert result.catalogue.entries[2].comments == (" remark",)
    assert result.problems == ()


def test_obsolete_entries_keep_their_previous_text_and_comments():
    text = (
        HEADER
        + '# remark\n#, fuzzy\n#~| msgid "Old."\n#~ msgctxt "a/b"\n#~ msgid "New."\n#~ msgstr "Neuf."\n'
    )
    (entry,) = read(text).catalogue.obsolete
    assert (entry.previous, entry.source, entry.translation) == ("Old.", "New.", "Neuf.")
    assert entry.comments == (" remark",)


def test_an_obsolete_entry_may_repeat_a_live_context():
    text = HEADER + ENTRY + "\n" + "".join(f"#~ {line}\n" for line in ENTRY.splitlines())
    assert found(text) == []


def test_an_unfinished_entry_takes_nothing_from_the_obsolete_one_after_it():
    text = HEADER + 'msgctxt "a/b"\nmsgid "Sit."\n' + '#~ msgctxt "c"\n#~ msgid "Up."\n#~ msgstr "Haut."\n'
    result = read(text)
    assert [(problem.code, problem.place.line) for problem in result.problems] == [("PO-9", 6)]
    assert [(entry.context, entry.translation) for entry in result.catalogue.obsolete] == [("c", "Haut.")]


def test_comments_after_the_last_entry_are_kept():
    assert read(HEADER + ENTRY + "\n# the end\n").catalogue.closing_comments == (" the end",)


def test_windows_line_ends_are_read_without_change_of_text():
    result = read((HEADER + ENTRY).replace("\n", "\r\n"))
    assert result.problems == ()
    assert result.catalogue.entries[0].translation == "Se lever."


def test_a_line_separator_inside_a_text_ends_no_line():
    result = read(HEADER + ENTRY.replace("Se lever", "Se\u2028lever"))
    assert result.catalogue.entries[0].translation == "Se\u2028lever."


FAULTS = [
    ("PO-2", b"not-utf-8", (HEADER + ENTRY).encode().replace(b"Se lever", b"Se l\xe9ver"), "fr.po:8:13"),
    ("PO-3", b"bom", b"\xef\xbb\xbf" + (HEADER + ENTRY).encode(), "fr.po:1:1"),
    ("PO-4", b"charset", (HEADER + ENTRY).replace("UTF-8", "ISO-8859-1"), "fr.po:1"),
    ("PO-5", b"header", ENTRY, "fr.po:1"),
    ("PO-5", b"no-charset", HEADER.replace("; charset=UTF-8", "") + ENTRY, "fr.po:1"),
    ("PO-6", b"unclosed", HEADER + ENTRY.replace('lever."', "lever."), "fr.po:8:18"),
    ("PO-6", b"after-quote", HEADER + ENTRY.replace('lever."', 'lever."."'), "fr.po:8:18"),
    ("PO-6", b"unquoted", HEADER + ENTRY.replace('"Se lever."', "Se lever."), "fr.po:8:8"),
    ("PO-7", b"escape", HEADER + ENTRY.replace("Se ", "Se\\'"), "fr.po:8:11"),
    ("PO-8", b"keyword", HEADER + 'msgtxt "x"\n' + ENTRY, "fr.po:6:1"),
    ("PO-8", b"lost-string", HEADER + '"lost"\n' + ENTRY, "fr.po:6:1"),
    ("PO-9", b"no-msgid", HEADER + ENTRY.replace('msgid "Stand up."\n', ""), "fr.po:6"),
    (
        "PO-9",
        b"no-msgstr",
        HEADER + 'msgctxt "a/b"\nmsgid "Stand up."\n\n' + ENTRY.replace("a/b", "c"),
        "fr.po:6",
    ),
    ("PO-9", b"no-context", HEADER + ENTRY.replace('msgctxt "a/b"\n', ""), "fr.po:6"),
    ("PO-9", b"empty-msgid", HEADER + ENTRY.replace("Stand up.", ""), "fr.po:6"),
    ("PO-9", b"twice", HEADER + ENTRY.replace("msgstr", 'msgid "Sit."\nmsgstr'), "fr.po:6"),
    ("PO-9", b"text-twice", HEADER + ENTRY + 'msgstr "Debout."\n', "fr.po:6"),
    ("PO-9", b"second-header", HEADER + ENTRY + "\n" + HEADER, "fr.po:10"),
    ("PO-10", b"repeated", HEADER + ENTRY + ENTRY, "fr.po:9"),
    ("PO-11", b"plural", HEADER + ENTRY.replace("msgstr", 'msgid_plural "x"\nmsgstr'), "fr.po:6"),
    ("PO-12", b"override", HEADER + ENTRY.replace("Se ", "Se\u202e"), "fr.po:8:11"),
    ("PO-13", b"control", HEADER + ENTRY.replace("Se ", "Se\x00"), "fr.po:8:11"),
    ("PO-13", b"lone-return", HEADER + ENTRY.replace("Se ", "Se\r"), "fr.po:8:11"),
    ("PO-14", b"language", HEADER.replace("fr", "de") + ENTRY, "fr.po:1"),
]


@pytest.mark.parametrize(("code", "name", "text", "place"), FAULTS, ids=[f[1].decode() for f in FAULTS])
def test_a_fault_of_the_file_is_reported_with_its_line(code, name, text, place):
    assert found(text) == [(code, place)]


def test_a_file_over_five_megabytes_is_refused_unread():
    assert found(b"#" * (LARGEST_FILE + 1)) == [("PO-1", "fr.po")]


def test_a_file_that_cannot_be_opened_is_a_problem_of_its_locale(tmp_path):
    (problem,) = read_catalogue_file(tmp_path, "fr").problems
    assert (problem.code, problem.locale, problem.place.path) == ("PO-1", "fr", tmp_path.as_posix())


def test_every_rule_of_catalogue_files_has_a_fault_here():
    assert {code for code, *_ in FAULTS} | {"PO-1", "PO-15"} == {
        rule.code for rule in RULES if rule.code.startswith("PO-")
    }


def test_all_faults_of_a_file_are_gathered_in_the_order_of_its_lines():
    text = HEADER + 'msgtxt "x"\n' + ENTRY.replace("Se ", "Se\\q") + "\n" + ENTRY + '\nmsgstr "\n'
    assert found(text) == [
        ("PO-8", "fr.po:6:1"),
        ("PO-7", "fr.po:9:11"),
        ("PO-10", "fr.po:11"),
        ("PO-9", "fr.po:15"),
        ("PO-6", "fr.po:15:9"),
    ]


def test_two_bad_bytes_on_two_lines_are_two_problems():
    assert [code for code, _ in found(b"# \xff\n# \xfe\n" + (HEADER + ENTRY).encode())] == ["PO-2", "PO-2"]


def test_the_language_of_the_header_may_be_written_with_an_underscore():
    assert read(HEADER.replace("fr", "pt_BR") + ENTRY, tag="pt-BR").problems == ()


def test_a_file_saved_in_an_older_encoding_is_one_problem():
    entries = "".join(ENTRY.replace("a/b", f"a/{n}").replace("Se lever", "Se lever là") for n in range(9))
    result = read_catalogue((HEADER + entries).encode("iso-8859-1"), "fr.po", "fr")
    ((problem,), is_readable) = result.problems, result.is_readable
    assert (problem.code, is_readable) == ("PO-2", False)
    assert problem.message.startswith("9 lines are not UTF-8")


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be"])
def test_a_file_saved_as_utf_16_is_one_problem_that_says_so(encoding):
    result = read((HEADER + ENTRY * 500).encode(encoding))
    assert [problem.code for problem in result.problems] == ["PO-2"]
    assert "UTF-16" in result.problems[0].message
    assert not result.is_readable


def test_a_flood_of_faults_is_told_in_a_hundred_lines_and_a_number():
    result = read(HEADER + "garbage\n" * 100_000 + "\x01" * 100_000)
    assert len(result.problems) == 101
    assert {problem.code for problem in result.problems} == {"PO-8", "PO-15"}
    assert result.problems[-1].code == "PO-15"
    assert result.problems[-1].place == Place("fr.po")
    assert int(result.problems[-1].message.split()[0]) > 190_000


def test_a_text_of_very_many_lines_is_joined_in_linear_time():
    """1 MB in 60 000 lines; joined one by one, each would copy all before it."""
    began = process_time()
    result = read(HEADER + 'msgctxt "a/b"\nmsgid "x"\nmsgstr ""\n' + '"abcdefghijklmnopqrst"\n' * 60_000)
    assert len(result.catalogue.entries[0].translation) == 1_200_000
    assert process_time() - began < 8
