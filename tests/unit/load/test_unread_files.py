from pathlib import Path

from signage.load.unread_files import unread_files


def unread(library, *names):
    library.write()
    for name in names:
        library.put(name, "a: 1\n")
    return {file.place.path: file for file in unread_files(Path("content"))}


def test_what_a_person_believes_to_count_is_told(library):
    found = unread(
        library,
        "approvals.yaml",
        "protocol/spill.yaml",
        "protocols/old/apron.yaml",
        "wards/readers.csv",
        "fonts/list.yaml",
        "letters.ttf",
    )
    assert sorted(found) == [
        "content/approvals.yaml",
        "content/fonts/list.yaml",
        "content/letters.ttf",
        "content/protocol",
        "content/protocols/old/apron.yaml",
        "content/wards/readers.csv",
    ]
    assert "Sign-offs stand in approvals.jsonl" in found["content/approvals.yaml"].hint
    assert found["content/protocol"].hint.startswith("Did you mean 'protocols/'? Read are kit.yaml")
    assert found["content/protocols/old/apron.yaml"].hint.startswith("Move it into content/protocols/ itself")
    assert "content/fonts/" in found["content/letters.ttf"].hint


def test_notes_backups_hidden_files_and_pictures_are_left_alone(library):
    assert not unread(
        library,
        "README.md",
        "notes/meeting.txt",
        ".git/config.yaml",
        "protocols/.apron.yaml.swp",
        "protocols/apron.yaml~",
        "protocols/apron.yaml.bak",
        "protocols/#apron.yaml#",
        "plan.png",
        "scenes/our-door.yaml",
        "fonts/letters.ttf",
    )


def test_a_library_where_a_folder_is_missing_or_full_ends_soon(library):
    many = [f"old/{number}.yaml" for number in range(200)]
    (file,) = unread(library, *many).values()
    assert "its 50 or more files are without effect" in file.message
    assert unread_files(Path("nowhere")) == ()
