import shutil
from dataclasses import replace
from datetime import date

import pytest
from demo import project
from rehearsal_edits import without_steps

from signage.ground.errors import RefusedError
from signage.ground.made_files import take_away
from signage.pages.address import FILE_LIST
from signage.produce.publish import _listed, publication_of, write_site

DAY = date(2026, 11, 26)


def test_a_language_in_work_has_no_pages_and_the_reason_is_said():
    made, refused = publication_of(project(), DAY, ("en", "bn"))
    assert list(made.words) == ["en"]
    (left_out,) = refused
    assert left_out.locale == "bn"
    assert "in-use" in " ".join(left_out.reasons)


def test_a_protocol_with_a_gap_has_no_pages_in_that_language_and_the_gap_is_named(tmp_path):
    locales = tmp_path / "locales"
    shutil.copytree(project().locales, locales)
    catalogue = locales / "fr" / "LC_MESSAGES" / "content.po"
    text = catalogue.read_text(encoding="utf-8")
    context = 'msgctxt "clean-hands/title"'
    start = text.index('msgstr "', text.index(context))
    catalogue.write_text(text[:start] + 'msgstr ""' + text[text.index("\n", start) :], encoding="utf-8")
    changed = replace(project(), locales=locales)
    made, (left_out,) = publication_of(changed, DAY, ("en", "fr"))
    assert list(made.words) == ["en", "fr"]
    assert (left_out.locale, left_out.protocol) == ("fr", project().library.protocols["clean-hands"].code)
    assert "clean-hands/title" in " ".join(left_out.reasons)
    assert "clean-hands" not in {each.id for each in made.protocols("fr")}
    assert "clean-hands" in {each.id for each in made.protocols("en")}


def test_an_order_that_can_hurt_is_taught_on_no_page():
    """What may not be printed is not shown either: the sheet and its page say the same."""
    library = project().library
    unsafe = without_steps(library.protocols["layered-protection"], "rub-after-outer")
    changed = replace(library, protocols={**library.protocols, unsafe.id: unsafe})
    made, refused = publication_of(replace(project(), library=changed), DAY, ("en", "ar"))
    assert {(each.locale, each.protocol) for each in refused} == {("en", "P1"), ("ar", "P1")}
    assert all("HH-1" in " ".join(each.reasons) for each in refused)
    assert unsafe.id not in {each.id for each in made.protocols()}


def test_no_language_at_all_is_refused():
    with pytest.raises(RefusedError, match="bn is in work"):
        publication_of(project(), DAY, ("bn",))
    library = project().library
    unsafe = without_steps(library.protocols["layered-protection"], "rub-after-outer")
    changed = replace(project(), library=replace(library, protocols={unsafe.id: unsafe}))
    with pytest.raises(RefusedError) as refused:
        publication_of(changed, DAY, ("en", "ar"))
    lines = str(refused.value).splitlines()
    assert len(lines) == len(set(lines)) > 1
    assert all("layered-protection.yaml:" in line for line in lines[1:])


def test_what_the_programme_wrote_before_goes_and_what_others_wrote_stays(tmp_path):
    write_site(tmp_path, {"index.html": b"a", "en/p1/old/index.html": b"b", "en/p1/index.html": b"c"})
    (tmp_path / "en" / "notes.txt").write_text("mine", encoding="utf-8")
    files = {"index.html": b"a", "en/p1/index.html": b"c"}
    assert take_away(tmp_path, _listed(tmp_path) - files.keys()) == ["en/p1/old/index.html"]
    write_site(tmp_path, files)
    assert not (tmp_path / "en" / "p1" / "old").exists()
    assert (tmp_path / "en" / "notes.txt").exists()
    assert (tmp_path / FILE_LIST).read_text(encoding="utf-8").split() == ["en/p1/index.html", "index.html"]


def test_a_run_that_is_killed_leaves_no_page_that_the_next_one_does_not_know(tmp_path, monkeypatch):
    """As kill -9 while the pages of a protocol are written, which is then withdrawn."""
    import signage.produce.publish as publish_module

    written = []

    def dies_on_the_third(path, data):
        if len(written) == 2:
            raise KeyboardInterrupt
        written.append(path)
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)

    with monkeypatch.context() as patch:
        patch.setattr(publish_module, "write_changed", dies_on_the_third)
        with pytest.raises(KeyboardInterrupt):
            write_site(tmp_path, {"en/g2/index.html": b"a", "en/g2/one/index.html": b"b"})
    assert (tmp_path / "en/g2/index.html").exists()
    take_away(tmp_path, _listed(tmp_path) - {"index.html"})
    assert not (tmp_path / "en").exists()


def test_a_list_that_leads_out_of_the_folder_removes_nothing_there(tmp_path):
    folder, outer = tmp_path / "site", tmp_path / "keep.txt"
    folder.mkdir()
    outer.write_text("keep", encoding="utf-8")
    (folder / "link.txt").symlink_to(outer)
    (folder / FILE_LIST).write_text(f"../keep.txt\n{outer}\nlink.txt\n..\\keep.txt\n", encoding="utf-8")
    assert _listed(folder) == {"link.txt"}
    assert take_away(folder, _listed(folder)) == []
    assert outer.exists()


def test_files_that_are_the_same_are_not_written_again(tmp_path):
    write_site(tmp_path, {"index.html": b"a"})
    before = (tmp_path / "index.html").stat().st_mtime_ns
    write_site(tmp_path, {"index.html": b"a"})
    assert (tmp_path / "index.html").stat().st_mtime_ns == before
