from content_samples import found, subject

from signage.check.content_rules.unread_file import RULE
from signage.load.unread_files import unread_files


def test_each_file_without_effect_is_told_with_what_to_do(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "content" / "protocol").mkdir(parents=True)
    (tmp_path / "content" / "protocol" / "spill.yaml").write_text("protocol: spill", encoding="utf-8")
    (problem,) = found(RULE, subject(unread=unread_files(tmp_path / "content")))
    assert problem.severity == "S2"
    assert "protocol/ is not a folder that is read: its file is without effect" in problem.message
    assert "Did you mean 'protocols/'?" in problem.hint


def test_a_content_folder_with_nothing_else_is_no_fault():
    assert found(RULE, subject()) == []
