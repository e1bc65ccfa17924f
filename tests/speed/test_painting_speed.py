"""How fast sheets are painted and looked at, and how fast a command starts, beside peers in the same run.

Run on request with ``pytest tests/speed -s -n 0``. Ratios, not seconds: a busy machine slows both sides.
"""

import os
import resource
import subprocess
import sys
import zlib
from time import process_time

import demo
import qrcode
from sheet_edits import KINDS

from signage.check.registry import all_sheet_rules
from signage.check.rule import SheetSubject
from signage.compose import qr
from signage.paint.pdf.document import paint_pdf

ROOT = demo.project().content.resolve().parent


def seconds_of(work, times=3):
    """Seconds of one core, the least of several times."""
    spent = []
    for _ in range(times):
        start = process_time()
        work()
        spent.append(process_time() - start)
    return min(spent)


def command_seconds(arguments, folder):
    """Seconds of one core of a command in a process of its own, with bytecode and nothing kept."""
    environment = {**os.environ, "XDG_CACHE_HOME": str(folder), "SOURCE_DATE_EPOCH": "1795651200"}
    environment.pop("PYTHONDONTWRITEBYTECODE", None)
    environment["PYTHONPYCACHEPREFIX"] = str(folder / "bytecode")
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, *arguments], check=False, cwd=ROOT, env=environment, capture_output=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def told(capsys, text):
    with capsys.disabled():
        sys.stdout.write(f"\n{text}\n")


def sheets():
    for kind, paper in (("poster", "A4"), ("poster", "A1"), ("step-cards", "A4"), ("pocket-checklist", "A4")):
        for tag in ("en", "ar", "hi"):
            phase = "take-off" if kind == "poster" else ""
            yield tag, demo.sheet(kind=kind, tag=tag, phase=phase, paper=paper)


def test_painting_beside_the_compression_of_what_is_painted(capsys):
    composed = [sheet for _, sheet in sheets()]
    data = [paint_pdf(sheet) for sheet in composed]
    floor = seconds_of(lambda: [zlib.compress(file, 9) for file in data])
    painting = seconds_of(lambda: [paint_pdf(sheet) for sheet in composed])
    pages = sum(len(sheet.pages) for sheet in composed)
    told(capsys, f"{painting / pages * 1000:.1f} ms a page, {painting / floor:.1f} times zlib at level 9")
    assert painting < 9 * floor


def test_a_code_beside_the_library_that_writes_and_weighs_it_eight_times(capsys):
    payloads = [f"https://training.example.org/en/p1/step-{number}/?r=K7M2" for number in range(60)]

    def by_library():
        for payload in payloads:
            code = qrcode.QRCode(error_correction=qrcode.constants.ERROR_CORRECT_Q, border=0)
            code.add_data(payload, optimize=0)
            code.make()

    def ours():
        qr._dark_rows.cache_clear()
        for payload in payloads:
            qr._dark_rows(payload)

    ours()
    ratio = seconds_of(by_library) / seconds_of(ours)
    told(capsys, f"a code is made {ratio:.1f} times as fast as by the library alone")
    assert ratio > 4


def test_looking_at_a_sheet_beside_painting_it(capsys):
    composed = list(sheets())
    painting = seconds_of(lambda: [paint_pdf(sheet) for _, sheet in composed])

    def look():
        for tag, sheet in composed:
            subject = SheetSubject(sheet, demo.context(tag), KINDS.of(sheet.kind))
            for rule in all_sheet_rules():
                list(rule.find(subject))

    looking = seconds_of(look)
    told(capsys, f"all rules on a sheet take {looking / painting:.1f} times as long as painting it")
    assert looking < 1.5 * painting


def test_commands_start_beside_an_empty_one(tmp_path, capsys):
    poster = ("draw", "--protocol", "P1", "--locale", "en", "--sheet", "poster", "--paper", "A4", "--fresh")
    commands = {
        ("explain", "SH-1"): 5,
        ("rehearse", "P1"): 7,
        (*poster, "--output", str(tmp_path / "output")): 14,
    }
    empty = ("-c", "import pydantic, reportlab.pdfbase.pdfdoc, typer, yaml")
    for command, most in commands.items():
        arguments = ("-m", "signage", *command)
        command_seconds(arguments, tmp_path)
        command_seconds(empty, tmp_path)
        ours = min(command_seconds(arguments, tmp_path) for _ in range(3))
        peer = min(command_seconds(empty, tmp_path) for _ in range(3))
        told(capsys, f"{command[0]}: {ours:.2f} s, {ours / peer:.1f} times loading four libraries")
        assert ours < most * peer
