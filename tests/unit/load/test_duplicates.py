from pathlib import Path


def copy(source, target, *changes):
    text = Path("content", source).read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    Path("content", target).write_text(text, encoding="utf-8")


def found(library):
    return [(str(problem.place), problem.code, problem.message) for problem in library.problems()]


def test_two_protocols_of_one_name_or_code_are_reported_in_the_later_file(library):
    library.write()
    copy("protocols/apron.yaml", "protocols/gown.yaml", ("protocol: apron", "protocol: gown"))
    copy("protocols/apron.yaml", "protocols/hood.yaml", ("code: P1", "code: P2"))
    assert found(library) == [
        (
            "content/protocols/gown.yaml:2:7",
            "LD-9",
            "The code 'P1' stands twice; the first is at content/protocols/apron.yaml:2:7.",
        ),
        (
            "content/protocols/hood.yaml:1:11",
            "LD-9",
            "The protocol 'apron' stands twice; the first is at content/protocols/apron.yaml:1:11.",
        ),
    ]


def test_two_wards_of_one_name_are_reported(library):
    library.write()
    copy("wards/mill.yaml", "wards/second.yaml")
    assert [each[:2] for each in found(library)] == [("content/wards/second.yaml:1:7", "LD-9")]


def test_two_steps_and_two_phases_of_one_name_are_reported(library):
    library.write()
    path = Path("content/protocols/apron.yaml")
    text = path.read_text(encoding="utf-8")
    phase = text[text.index("  - phase:") :]
    path.write_text(text + phase, encoding="utf-8")
    assert [each[:2] for each in found(library)] == [
        ("content/protocols/apron.yaml:31:12", "LD-9"),
        ("content/protocols/apron.yaml:36:15", "LD-9"),
        ("content/protocols/apron.yaml:43:15", "LD-9"),
    ]


def test_one_step_name_may_stand_in_two_protocols(library):
    library.write()
    copy("protocols/apron.yaml", "protocols/gown.yaml", ("protocol: apron", "protocol: gown"), ("P1", "P2"))
    assert found(library) == []
    assert list(library.load().protocols) == ["apron", "gown"]
