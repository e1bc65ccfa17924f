"""Two states of the small library that ``signage start`` writes, compared by the command."""

import shutil
import subprocess

import pytest
from outside_readers import outside

PdfReader = outside("pypdf").PdfReader


@pytest.fixture
def changed(ward, monkeypatch):
    """The library as it was in ``old``, and one text of it changed since."""
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795651200")
    (ward / "old").mkdir()
    for name in ("content", "locales"):
        if (ward / name).is_dir():
            shutil.copytree(ward / name, ward / "old" / name)
    path = ward / "content" / "protocols" / "gloves.yaml"
    text = path.read_text(encoding="utf-8")
    first = next(line for line in text.splitlines() if line.strip().startswith("text: "))
    path.write_text(text.replace(first, f"{first} at once", 1), encoding="utf-8")
    return ward


def test_a_changed_text_is_told_as_text_json_and_pdf(changed, signage):
    told = signage("compare old --review review.pdf --fresh")
    assert "at once” added" in told.out
    value = signage("compare old --format json").json
    (protocol,) = value["protocols"].values()
    (step,) = protocol["steps"]
    assert step["changes"] == ["changed"]
    (text,) = step["texts"]
    assert [piece["text"].strip() for piece in text["words"] if piece["fate"] != "same"] == ["at once"]
    assert value["sheets"]
    assert value["copies"] == []
    pages = PdfReader(changed / "review.pdf").pages
    size = [(round(float(page.mediabox.width) * 25.4 / 72), len(page.extract_text())) for page in pages]
    assert [width for width, _ in size] == [210, 297]
    assert "Before" in pages[-1].extract_text()


def test_the_same_folder_twice_differs_in_nothing(changed, signage):
    told = signage("compare old old")
    assert (told.status, told.out) == (0, "Nothing differs between old and old.\n")
    assert signage("compare old old --format json").json["protocols"] == {}


def test_what_is_no_library_is_told_with_what_to_do(changed, signage):
    (changed / "empty").mkdir()
    (changed / "broken").mkdir()
    shutil.copytree(changed / "content", changed / "broken" / "content")
    (changed / "broken" / "content" / "kit.yaml").write_text("kit: [")
    for words, part in (
        ("compare empty", "holds no library"),
        ("compare content/kit.yaml", "is a file"),
        ("compare olf", "no folder"),
        ("compare broken", "broken/content/kit.yaml"),
        ("compare old broken", "broken/content/kit.yaml"),
        ("compare old --review old", "is a folder"),
    ):
        told = signage(words)
        assert told.status == 2, words
        assert part in told.err, words
        assert not told.out


def test_a_revision_in_git_is_compared_with_what_is_there_now(changed, signage):
    outside("git")
    for words in (["init", "-q"], ["add", "content"], ["commit", "-qm", "one"]):
        subprocess.run(["git", "-c", "user.email=a@b", "-c", "user.name=a", *words], cwd=changed, check=True)
    assert signage("compare HEAD").out == "Nothing differs between HEAD and content/.\n"
    path = changed / "content" / "policy.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("value: 20", "value: 25", 1), encoding="utf-8")
    value = signage("compare HEAD --format json").json
    assert ("policy", "changed") in {(part["kind"], part["change"]) for part in value["parts"]}
    (changed / "content" / "kit.yaml").write_text("kit: [")
    subprocess.run(
        ["git", "-c", "user.email=a@b", "-c", "user.name=a", "commit", "-qam", "2"], cwd=changed, check=True
    )
    told = signage("compare HEAD HEAD~1")
    assert told.status == 2
    assert "HEAD/content/kit.yaml:" in told.err
