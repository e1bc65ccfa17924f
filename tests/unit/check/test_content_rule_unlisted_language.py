from content_samples import found, library, subject

from signage.check.content_rules.unlisted_language import RULE
from signage.ground.place import Place
from signage.words.folders import unlisted_folders


def test_the_hint_is_the_line_to_add():
    (problem,) = found(RULE, subject(unlisted=(("sw", Place("locales/sw")),)))
    assert problem.hint.endswith("sw: {owner: language lead, state: in-work}")
    assert "Add this line under 'locales:'" in problem.hint


def test_another_writing_of_a_language_of_the_library_is_recognised():
    (problem,) = found(RULE, subject(unlisted=(("FR", Place("locales/FR")),)))
    assert "Is it 'fr'? Then rename the folder." in problem.hint


def test_folders_of_listed_languages_and_other_folders_are_left_alone(tmp_path):
    for name in ("fr/LC_MESSAGES", "sw/LC_MESSAGES", "notes"):
        (tmp_path / name).mkdir(parents=True)
    assert [folder.name for folder in unlisted_folders(library(), tmp_path)] == ["sw"]
    assert unlisted_folders(library(), tmp_path / "nowhere") == ()
    assert found(RULE, subject()) == []
