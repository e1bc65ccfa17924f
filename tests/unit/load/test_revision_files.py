"""Revisions of a library out of a repository that nobody vouches for."""

import subprocess

import pytest
from outside_readers import outside

from signage.ground.errors import MissingFromMachineError, WrongUsageError
from signage.load.revision_files import files_of_revision

outside("git")


@pytest.fixture
def repository(tmp_path):
    """A library beside another folder in a repository with a filter and a hook that would leave a trace."""

    def git(*words, given=None):
        done = subprocess.run(
            ["git", "-c", "user.email=a@b", "-c", "user.name=a", *words],
            cwd=tmp_path, check=True, capture_output=True, input=given,
        )  # fmt: skip
        return done.stdout.decode().strip()

    git("init", "-q", "-b", "main")
    for name in ("wärd/content/library.yaml", "wärd/locales/fr/x.po", "wärd/content/a b/é.txt", "other.txt"):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(name.encode())
    (tmp_path / ".gitattributes").write_text("*.yaml filter=trace export-ignore\n")
    git("config", "filter.trace.smudge", f"touch '{tmp_path}/trace'; cat")
    git("config", "core.fsmonitor", f"touch '{tmp_path}/trace'")
    git("add", "-A")
    git("commit", "-qm", "one")
    (tmp_path / "trace").unlink(missing_ok=True)
    return tmp_path, git


def _files(folder, revision):
    """All that a revision holds, by the paths below its folders."""
    with files_of_revision(revision, folder / "wärd" / "content", folder / "wärd" / "locales") as folders:
        found = {
            path.relative_to(each).as_posix(): path.read_bytes().decode()
            for each in folders
            for path in each.rglob("*")
            if path.is_file()
        }
    assert not any(each.exists() for each in folders)
    return found


def test_a_revision_is_what_was_stored_and_nothing_of_the_repository_runs(repository):
    folder, git = repository
    (folder / "wärd" / "content" / "library.yaml").write_text("later")
    (folder / "wärd" / "content" / "link").symlink_to("/etc/passwd")
    git("add", "-A")
    git("commit", "-qm", "two")
    (folder / "trace").unlink(missing_ok=True)
    wanted = {"library.yaml": "wärd/content/library.yaml", "fr/x.po": "wärd/locales/fr/x.po"}
    wanted["a b/é.txt"] = "wärd/content/a b/é.txt"
    assert _files(folder, "HEAD~1") == wanted
    assert _files(folder, "HEAD") == {**wanted, "library.yaml": "later"}
    assert not (folder / "trace").exists()


def test_a_name_that_is_no_revision_is_no_option_either(repository):
    folder, _git = repository
    for name in (
        "HAED",
        "--help",
        "--upload-pack=touch trace",
        "HEAD:wärd",
        "HEAD -- x",
        "\u202e",
        "HEAD\nHEAD",
    ):
        with pytest.raises(WrongUsageError, match="no folder and no revision"):
            _files(folder, name)
    assert not (folder / "trace").exists()


def test_a_revision_without_a_library_and_a_folder_outside_git_are_told(repository, tmp_path_factory):
    folder, git = repository
    git("rm", "-rq", "--cached", "wärd/content")
    git("commit", "-qm", "gone")
    with pytest.raises(WrongUsageError, match="has no library"):
        _files(folder, "HEAD")
    elsewhere = tmp_path_factory.mktemp("elsewhere")
    (elsewhere / "wärd" / "content").mkdir(parents=True)
    with pytest.raises(WrongUsageError, match="in no git repository"):
        _files(elsewhere, "HEAD")


def test_a_tree_that_would_write_elsewhere_is_refused(repository):
    folder, git = repository
    blob = git("hash-object", "-w", "--stdin", given=b"x")
    for name in ("..", "a:b", "a\\b"):
        content = git("mktree", "--missing", given=f"100644 blob {blob}\t{name}\n".encode())
        ward = git("mktree", given=f"040000 tree {content}\tcontent\n".encode())
        top = git("mktree", given=f"040000 tree {ward}\twärd\n".encode())
        commit = git("commit-tree", top, "-m", "odd")
        with pytest.raises(WrongUsageError, match="no folder can hold safely"):
            _files(folder, commit)


def test_a_machine_without_git_is_told_to_name_a_folder(repository, monkeypatch):
    monkeypatch.setenv("PATH", "")
    with pytest.raises(MissingFromMachineError, match="Name a folder"):
        _files(repository[0], "HEAD")
