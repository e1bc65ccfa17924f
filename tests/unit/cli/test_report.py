"""Results go to standard output, and no terminal obeys what a file or a person wrote."""

import io
import json
import sys
from dataclasses import replace

import pytest

from signage.cli import report
from signage.cli.streams import prepare_streams
from signage.ground.place import Place
from signage.ground.problem import Problem, Severity

FINDING = Problem("SH-1", "text-overflow", Severity.S1, "m", "cure", Place("a.yaml", 3, 5), locale="fr")


def test_findings_go_to_standard_output_and_unreadable_input_to_standard_error(capsys):
    report.print_problems([FINDING])
    told = capsys.readouterr()
    assert told.out.splitlines() == [
        "a.yaml:3:5: S1 SH-1 m [fr]",
        "    cure",
        "1 found (1 S1). 'signage explain CODE' tells more about a code.",
    ]
    assert not told.err
    report.print_problems([FINDING], is_error=True)
    told = capsys.readouterr()
    assert not told.out
    assert "SH-1" in told.err


def test_a_report_says_how_to_see_what_it_leaves_out(capsys):
    sheets = [replace(FINDING, sheet=f"s{n}", text="p/x/text") for n in range(5)]
    report.print_problems(sheets)
    first, _, last = capsys.readouterr().out.splitlines()
    assert first == "a.yaml:3:5: S1 SH-1 m [fr · 5 sheets: s0, s1, s2, …]"
    assert last.startswith("5 found (5 S1), told in 1; 'signage check --all' tells each.")
    report.print_problems(sheets, is_whole=True)
    assert len(capsys.readouterr().out.splitlines()) == 11


def test_markup_and_controls_of_users_are_shown_as_they_are(capsys):
    report.print_problems(
        [replace(FINDING, message="[bold]x[/y] \x1b[31m\nS1 LD-1 forged", place=Place("out[/x].yaml", 1))]
    )
    out = capsys.readouterr().out
    assert r"out[/x].yaml:1: S1 SH-1 [bold]x[/y] \x1b[31m\nS1 LD-1 forged" in out
    report.say("in out[bold]/ \x9b2J")
    report.say_error("in out[bold]/ \x07")
    told = capsys.readouterr()
    assert told.out == "in out[bold]/ \\x9b2J\n"
    assert told.err == "in out[bold]/ \\x07\n"
    assert str(report.cell("[/x]\x1b")) == r"[/x]\x1b"


def test_a_message_is_never_a_page_long(capsys):
    report.print_problems([replace(FINDING, message="x" * 200_000)])
    assert len(capsys.readouterr().out) < 1000


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_no_encoding_of_the_output_ends_a_command(monkeypatch, encoding):
    value = {"text": "افرك × 20 – \udce9 \x9b"}
    stream = io.TextIOWrapper(io.BytesIO(), encoding=encoding, errors="strict")
    monkeypatch.setattr(sys, "stdout", stream)
    prepare_streams()
    report.print_json(value)
    report.say("× – افرك")
    stream.flush()
    written = stream.buffer.getvalue().decode(encoding)
    read, end = json.JSONDecoder().raw_decode(written)
    assert read == value
    assert written[end:].strip()
    assert "\x9b" not in written


def test_a_closed_stream_swallows(monkeypatch):
    monkeypatch.setattr(sys, "stdout", None)
    prepare_streams()
    report.say("unheard")
    sys.stdout.close()
