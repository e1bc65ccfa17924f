"""What a run takes away of an earlier one: outdated sheets of its own selection, nothing else."""

import hashlib
import json
from dataclasses import replace

from signage.compose.sheet_kinds import read_sheet_kinds
from signage.model.mark import Mark
from signage.produce.draw import Drawn
from signage.produce.drawn_files import LIST_NAME, clear_outdated, read_list
from signage.produce.requests import SheetRequest, Wanted

EVERYTHING = Wanted()
KINDS = read_sheet_kinds()


def cleared(output, wanted, made, **options):
    return clear_outdated(output, wanted, made, KINDS, **options)


def drawn(output, name, request, data=b"pdf", pictures=()):
    path = output / request.locale / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(data)
    beside = []
    for picture in pictures:
        beside.append(path.with_name(picture))
        beside[-1].write_bytes(data + b" as picture")
    digest = hashlib.sha256(data).hexdigest()
    return Drawn(path, request, request.kind, 1, "AAAA-BBBB", Mark.DRAFT, (), digest, beside=tuple(beside))


CARDS = SheetRequest("p", "en", "step-cards", "", "A4")
POSTER = SheetRequest("p", "en", "poster", "on", "A3")


def files(output):
    return {path.relative_to(output).as_posix() for path in output.rglob("*") if path.is_file()} - {LIST_NAME}


def test_a_sheet_that_is_no_longer_made_goes_and_others_stay(tmp_path):
    both = [drawn(tmp_path, "p-cards.pdf", CARDS), drawn(tmp_path, "p-poster.pdf", POSTER)]
    assert cleared(tmp_path, EVERYTHING, both).removed == ()
    (tmp_path / "en" / "mine.pdf").write_bytes(b"mine")
    gone = cleared(tmp_path, EVERYTHING, both[:1])
    assert gone.removed == ("en/p-poster.pdf",)
    assert files(tmp_path) == {"en/p-cards.pdf", "en/mine.pdf"}


def test_what_a_run_was_not_asked_for_stays(tmp_path):
    other = replace(CARDS, protocol="q")
    arabic = replace(CARDS, locale="ar")
    mono = replace(CARDS, tone="mono")
    before = [
        drawn(tmp_path, f"{index}.pdf", request)
        for index, request in enumerate((CARDS, POSTER, other, arabic, mono))
    ]
    cleared(tmp_path, EVERYTHING, before)
    wanted = Wanted(protocols=("p",), locales=("en",), kinds=("step-cards",))
    assert cleared(tmp_path, wanted, []).removed == ("en/0.pdf",)
    assert files(tmp_path) == {"en/1.pdf", "en/2.pdf", "ar/3.pdf", "en/4.pdf"}
    assert len(read_list(tmp_path)) == 4


def test_a_file_that_somebody_changed_is_left_and_named(tmp_path):
    cleared(tmp_path, EVERYTHING, [drawn(tmp_path, "a.pdf", CARDS)])
    (tmp_path / "en" / "a.pdf").write_bytes(b"with a note")
    gone = cleared(tmp_path, EVERYTHING, [])
    assert (gone.removed, gone.changed) == ((), ("en/a.pdf",))
    assert files(tmp_path) == {"en/a.pdf"}


def test_whoever_keeps_is_told_what_is_outdated_and_again_next_time(tmp_path):
    cleared(tmp_path, EVERYTHING, [drawn(tmp_path, "a.pdf", CARDS)])
    for _ in range(2):
        gone = cleared(tmp_path, EVERYTHING, [], keeps=True)
        assert (gone.removed, gone.kept) == ((), ("en/a.pdf",))
    assert cleared(tmp_path, EVERYTHING, []).removed == ("en/a.pdf",)


def test_a_picture_of_a_page_stays_as_long_as_the_page_is_the_same(tmp_path):
    cleared(tmp_path, EVERYTHING, [drawn(tmp_path, "a.pdf", CARDS, pictures=("a-1.png", "a-2.png"))])
    cleared(tmp_path, EVERYTHING, [drawn(tmp_path, "a.pdf", CARDS)])
    assert files(tmp_path) == {"en/a.pdf", "en/a-1.png", "en/a-2.png"}
    gone = cleared(tmp_path, EVERYTHING, [drawn(tmp_path, "a.pdf", CARDS, b"changed")])
    assert set(gone.removed) == {"en/a-1.png", "en/a-2.png"}


def test_a_list_that_others_changed_removes_nothing_outside_the_folder(tmp_path):
    output, outer = tmp_path / "out", tmp_path / "keep.txt"
    outer.write_bytes(b"keep")
    cleared(output, EVERYTHING, [drawn(output, "a.pdf", CARDS)])
    (output / "link.pdf").symlink_to(outer)
    listed = json.loads((output / LIST_NAME).read_text())
    entry = {**listed["files"][0], "sha256": hashlib.sha256(b"keep").hexdigest()}
    listed["files"] += [
        {**entry, "path": path} for path in ("../keep.txt", str(outer), "link.pdf", "..\\keep.txt")
    ]
    (output / LIST_NAME).write_text(json.dumps(listed))
    assert cleared(output, EVERYTHING, []).removed == ("en/a.pdf",)
    assert outer.exists()
    assert (output / "link.pdf").is_symlink()


def test_a_damaged_list_is_no_reason_to_remove_anything(tmp_path):
    made = [drawn(tmp_path, "a.pdf", CARDS)]
    cleared(tmp_path, EVERYTHING, made)
    for damage in (
        b"",
        b"{",
        b"[]",
        b'{"version": 1}',
        b'{"version": 1, "files": [{}]}',
        b"[" * 100_000,
        b"\xff",
    ):
        (tmp_path / LIST_NAME).write_bytes(damage)
        assert cleared(tmp_path, EVERYTHING, []).removed == ()
        assert files(tmp_path) == {"en/a.pdf"}
