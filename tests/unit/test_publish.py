from datetime import date
from types import SimpleNamespace

import pytest
from demo import project

from signage.ground.errors import RefusedError
from signage.pages.address import FILE_LIST
from signage.publish import _listed, _take_away, publication_of, write_site

DAY = date(2026, 11, 26)


def test_a_language_in_work_has_no_pages_and_the_reason_is_said():
    made, refused = publication_of(project(), DAY, ("en", "bn"))
    assert list(made.words) == ["en"]
    (left_out,) = refused
    assert left_out.locale == "bn"
    assert "in-use" in left_out.why


def test_a_language_with_gaps_is_left_out_and_a_gap_is_named(tmp_path):
    bare = SimpleNamespace(
        library=project().library,
        marked_library=project().marked_library,
        locales_in_use=("en", "fr"),
        wording=lambda tag: SimpleNamespace(
            gaps=() if tag == "en" else ("kit/apron/name",),
            tag=tag,
            name=tag,
            script="Latn",
            is_right_to_left=False,
        ),
        revision=lambda _protocol: "K7M2",
    )
    made, refused = publication_of(bare, DAY)
    assert list(made.words) == ["en"]
    assert "kit/apron/name" in refused[0].why


def test_no_language_at_all_is_refused():
    with pytest.raises(RefusedError, match="bn is still in work"):
        publication_of(project(), DAY, ("bn",))


def test_what_the_programme_wrote_before_goes_and_what_others_wrote_stays(tmp_path):
    write_site(tmp_path, {"index.html": b"a", "en/p1/old/index.html": b"b", "en/p1/index.html": b"c"})
    (tmp_path / "en" / "notes.txt").write_text("mine", encoding="utf-8")
    files = {"index.html": b"a", "en/p1/index.html": b"c"}
    assert _take_away(tmp_path, _listed(tmp_path) - files.keys()) == 1
    write_site(tmp_path, files)
    assert not (tmp_path / "en" / "p1" / "old").exists()
    assert (tmp_path / "en" / "notes.txt").exists()
    assert (tmp_path / FILE_LIST).read_text(encoding="utf-8").split() == ["en/p1/index.html", "index.html"]


def test_a_list_that_leads_out_of_the_folder_removes_nothing_there(tmp_path):
    folder, outer = tmp_path / "site", tmp_path / "keep.txt"
    folder.mkdir()
    outer.write_text("keep", encoding="utf-8")
    (folder / "link.txt").symlink_to(outer)
    (folder / FILE_LIST).write_text(f"../keep.txt\n{outer}\nlink.txt\n..\\keep.txt\n", encoding="utf-8")
    assert _listed(folder) == {"link.txt"}
    assert _take_away(folder, _listed(folder)) == 0
    assert outer.exists()


def test_files_that_are_the_same_are_not_written_again(tmp_path):
    write_site(tmp_path, {"index.html": b"a"})
    before = (tmp_path / "index.html").stat().st_mtime_ns
    write_site(tmp_path, {"index.html": b"a"})
    assert (tmp_path / "index.html").stat().st_mtime_ns == before
