import json


def test_help_names_every_command(run, folder):
    text = run(folder, "--help").stdout
    for command in ("about", "check", "draw", "explain", "start", "words"):
        assert command in text


def test_an_empty_folder_says_what_is_missing_and_what_to_do(run, folder):
    message = run(folder, "draw", expect=2).stderr
    assert "content" in message
    assert "signage start" in message


def test_a_mistyped_command_is_answered_with_the_nearest(run, folder):
    assert "Did you mean 'draw'" in run(folder, "drwa", expect=2).stderr


def test_start_then_check_then_draw(run, folder):
    run(folder, "start", "my ward")
    ward = folder / "my ward"
    run(ward, "check")
    run(ward, "draw")
    made = sorted(path.name for path in (ward / "output").rglob("*.pdf"))
    assert any("poster" in name for name in made)
    assert any("step-cards" in name for name in made)
    assert any("pocket-checklist" in name for name in made)
    assert all(name.isascii() for name in made)


def test_start_touches_no_folder_that_holds_something(run, folder):
    (folder / "notes.txt").write_text("mine", encoding="utf-8")
    assert "not empty" in run(folder, "start", ".", expect=2).stderr
    assert [path.name for path in folder.iterdir()] == ["notes.txt"]


def test_about_is_json_for_programmes(run, folder):
    facts = json.loads(run(folder, "about", "--format", "json").stdout)
    assert facts["libraries"]["reportlab"]
    assert facts["fonts"]


def test_explain_lists_and_explains(run, folder):
    assert "SH-3" in run(folder, "explain").stdout
    assert "zone" in run(folder, "explain", "sh-3").stdout
    assert "SH-3" in run(folder, "explain", "SH3", expect=2).stderr
