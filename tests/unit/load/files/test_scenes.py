"""The folder scenes of the content: names and syntax; what a scene means is not judged here."""

from pathlib import Path


def found(library):
    return [(str(problem.place), problem.code) for problem in library.problems()]


def test_a_library_without_scenes_has_none(library):
    library.write()
    assert library.load().scene_files == ()


def test_scenes_are_listed_and_their_names_may_be_used_by_steps(library):
    library.write()
    library.put("scenes/our-tunic.yaml", "theme: don\n")
    path = Path("content/protocols/apron.yaml")
    path.write_text(
        path.read_text(encoding="utf-8").replace("picture: apron-on", "picture: our-tunic"), encoding="utf-8"
    )
    assert library.load().scene_files == ("content/scenes/our-tunic.yaml",)


def test_a_picture_that_nobody_has_drawn_stays_unknown(library):
    library.write()
    library.put("scenes/our-tunic.yaml", "theme: don\n")
    path = Path("content/protocols/apron.yaml")
    path.write_text(
        path.read_text(encoding="utf-8").replace("picture: apron-on", "picture: our-tunik"), encoding="utf-8"
    )
    (problem,) = library.problems()
    assert problem.code == "LD-20"
    assert "our-tunic" in problem.hint


def test_the_name_of_a_picture_that_ships_is_taken(library):
    library.write()
    library.put("scenes/hand-rub.yaml", "theme: don\n")
    (problem,) = library.problems()
    assert (problem.place.path, problem.code) == ("content/scenes/hand-rub.yaml", "LD-9")
    assert "our-hand-rub.yaml" in problem.hint


def test_a_name_must_be_one_that_files_and_catalogues_can_carry(library):
    library.write()
    library.put("scenes/Our_Tunic.yaml", "theme: don\n")
    assert found(library) == [("content/scenes/Our_Tunic.yaml", "LD-15")]


def test_syntax_is_held_to_the_rules_of_all_content(library):
    library.write()
    library.put("scenes/tabs.yaml", "theme: don\n\tfocus: x\n")
    library.put("scenes/twice.yaml", "theme: don\ntheme: doff\n")
    library.put("scenes/latin.yaml", b"alt: caf\xe9\n")
    library.put("scenes/other.yml", "theme: don\n")
    assert found(library) == [
        ("content/scenes/latin.yaml:1:9", "LD-3"),
        ("content/scenes/other.yml", "LD-21"),
        ("content/scenes/tabs.yaml:2:1", "LD-6"),
        ("content/scenes/twice.yaml:2:1", "LD-9"),
    ]


def test_an_empty_folder_of_scenes_is_no_fault(library):
    library.write()
    Path("content/scenes").mkdir()
    assert found(library) == []
