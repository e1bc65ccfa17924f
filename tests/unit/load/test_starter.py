from pathlib import Path

from signage.load.library import load_library
from signage.load.starter import STARTERS, starter_files

PICTURES = {
    "hand-rub", "inner-glove-on", "enter-room", "to-dirty-side", "rub-inner-gloves", "inner-glove-off",
    "rub-bare-hands", "to-corridor",
}  # fmt: skip


def write(folder):
    for name, data in starter_files().items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    return folder / "content"


def test_the_library_to_begin_from_loads_without_a_problem(tmp_path):
    library = load_library(write(tmp_path), PICTURES)
    assert [len(protocol.steps) for protocol in library.protocols.values()] == [8]
    assert library.source_locale == "en"
    assert library.locales["fr"].state == "in-work"


def test_it_holds_a_whole_content_folder_and_nothing_else():
    assert list(starter_files()) == sorted(starter_files())
    assert {name.split("/")[0] for name in starter_files()} == {"content"}
    assert {name.rsplit("/", 1)[-1] for name in starter_files()} == {
        "library.yaml", "kit.yaml", "people.yaml", "policy.yaml", "terms.yaml", "example-ward.yaml",
        "gloves.yaml",
    }  # fmt: skip


def test_its_values_are_marked_as_examples():
    assert b"no advice" in starter_files()["content/policy.yaml"]
    for line in starter_files()["content/policy.yaml"].decode().splitlines():
        assert "value:" not in line or "Example value" in line


def test_its_step_wears_and_removes_the_same_kit(tmp_path):
    (protocol,) = load_library(write(tmp_path)).protocols.values()
    verbs = [action.verb for step in protocol.steps for action in step.actions]
    assert verbs.count("don") == verbs.count("doff") == 1
    assert verbs[-2] == "hygiene"


def test_the_starter_brings_the_same_words_for_meaning_as_the_demo(tmp_path):
    demo = load_library(Path(__file__).resolve().parents[3] / "content")
    assert load_library(write(tmp_path)).vocabulary == demo.vocabulary
    for tag in ("en", "fr", "ar", "hi", "am", "bn"):
        assert all(tag in verb.approved for verb in demo.vocabulary.verbs), tag
        assert {tag} <= demo.vocabulary.negation.keys() & demo.vocabulary.restriction.keys()


def test_the_long_library_loads_with_its_own_pictures_and_the_same_words(tmp_path):
    found = starter_files(like="second-hospital", locales=("ar",))
    for name, data in found.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
    library = load_library(tmp_path / "content")
    assert {name: len(protocol.steps) for name, protocol in library.protocols.items()} == {
        "hand-basics": 7, "long-suit": 56, "unforeseen": 4,
    }  # fmt: skip
    assert list(library.locales) == ["en", "ar"]
    assert "ar" in library.wards["long-ward"].readers
    assert library.vocabulary == load_library(write(tmp_path / "short")).vocabulary
    own = {Path(scene).stem for scene in library.scene_files}
    pictures = {step.picture for protocol in library.protocols.values() for step in protocol.steps}
    assert own <= pictures
    for line in found["content/policy.yaml"].decode().splitlines():
        assert "value:" not in line or "Example value" in line


def test_both_libraries_are_named():
    assert set(STARTERS) == {"gloves", "second-hospital"}
    heads = [
        data.split(b"\n")[0]
        for name, data in starter_files(like="second-hospital").items()
        if "scenes" not in name
    ]
    assert all(head.startswith(b"# yaml-language-server: $schema=") for head in heads)
