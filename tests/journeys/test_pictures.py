"""Pictures of one's own, a sheet of all pictures, and a trial from the form to the verdict."""

import csv
import json

import pytest

OUR_CARD = """\
theme: hands
focus: card
gloss: {who: wearer, does: show, what: a card}
alt: A hand holds up a card.
layers:
  - {id: hand, part: hand-open, at: [48, 84], args: {arm: 6}}
  - {id: card, part: card, at: [48, 26]}
"""


@pytest.fixture
def own(ward):
    """A small library with a picture of its own."""
    scenes = ward / "content/scenes"
    scenes.mkdir()
    (scenes / "our-card.yaml").write_text(OUR_CARD, encoding="utf-8")
    return ward


def rewrite(path, old, new):
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def drawn(run, folder, *arguments):
    done = run(folder, "draw", "--locale", "en", "--protocol", "G1", *arguments, "--format", "json")
    (sheet,) = json.loads(done.stdout)["sheets"]
    return folder / sheet["path"], sheet


def test_a_picture_of_ones_own_is_drawn_and_offered_to_translators(run, own):
    rewrite(own / "content/protocols/gloves.yaml", "picture: hand-rub", "picture: our-card")
    done = run(own, "draw", "--sheet", "pictures", "--sheet", "step-cards", "--format", "json")
    assert {"pictures", "step-cards"} == {sheet["kind"] for sheet in json.loads(done.stdout)["sheets"]}
    run(own, "words", "collect")
    assert "A hand holds up a card." in (own / "locales/content.pot").read_text(encoding="utf-8")


def test_faults_of_a_picture_of_ones_own_stand_in_the_same_report_as_others(run, own):
    rewrite(own / "content/scenes/our-card.yaml", "part: hand-open", "part: hand-opne")
    rewrite(own / "content/kit.yaml", "kind: glove", "kind: glov")
    message = run(own, "draw", expect=2).stderr
    assert "our-card.yaml:6:5" in message
    assert "PIC-2" in message
    assert "kit.yaml" in message


def test_a_picture_that_ships_keeps_its_name(run, own):
    (own / "content/scenes/hand-rub.yaml").write_text(OUR_CARD, encoding="utf-8")
    message = run(own, "draw", expect=2).stderr
    assert "our-hand-rub.yaml" in message


def test_a_picture_of_ones_own_that_cannot_be_printed_is_found_by_the_check(run, own):
    rewrite(own / "content/scenes/our-card.yaml", "at: [48, 26]", "at: [8, 26]")
    done = run(own, "check", "--format", "json", expect=1)
    found = {(p["code"], p["path"]) for p in json.loads(done.stdout)["problems"]}
    assert ("PC-6", "content/scenes/our-card.yaml") in found
    assert "edge" in run(own, "explain", "PC-6").stdout


def test_a_bare_draw_makes_no_sheets_about_pictures(run, ward):
    run(ward, "draw", "--locale", "en", "--protocol", "G1", "--paper", "A4")
    assert list((ward / "output").rglob("*.pdf"))
    assert not list((ward / "output").rglob("*picture*"))


def test_pictures_are_drawn_with_a_gallery(run, ward):
    path, _ = drawn(run, ward, "--sheet", "pictures", "--png", "--resolution", "50")
    assert path.with_name(f"{path.stem}-gallery.png").is_file()


def test_a_trial_is_the_same_for_a_seed_and_another_for_another(run, ward):
    arguments = ("--sheet", "picture-trial", "--seed")
    first, second, other = (
        drawn(run, ward, *arguments, seed, "--output", out)[1]["sha256"]
        for seed, out in (("4", "one"), ("4", "two"), ("5", "three"))
    )
    assert first == second != other


def test_a_trial_from_the_form_to_the_verdict(run, ward):
    path, _ = drawn(run, ward, "--sheet", "picture-trial", "--seed", "4")
    with path.with_suffix(".csv").open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    table = ward / "ratings.csv"

    def rate(category_of):
        with table.open("w", encoding="utf-8-sig", newline="") as stream:
            writer = csv.DictWriter(stream, rows[0], delimiter=";")
            writer.writeheader()
            for reader in range(1, 13):
                form = "AB"[reader % 2]
                for row in rows:
                    if row["form"] == form:
                        rating = category_of(row["picture"], reader, row["rater"])
                        writer.writerow(row | {"reader": reader, "category": rating})

    rate(lambda *_: "correct")
    passed = run(ward, "audit", "pictures", "ratings.csv").stdout
    assert "proved" in passed
    assert "not defined" in passed

    def confused(picture, reader, rater):
        if picture == "hand-rub" and reader == 3 and rater == "2":
            return "partly"
        return "wrong" if picture == "inner-glove-on" and reader > 4 else "correct"

    rate(confused)
    failed = run(ward, "audit", "pictures", "ratings.csv", expect=1).stdout
    assert "inner-glove-on: a share of 0.333 is below 0.67" in failed
    report = json.loads(run(ward, "audit", "pictures", "ratings.csv", "--format", "json", expect=1).stdout)
    assert report["failed"] == ["inner-glove-on"]
    assert report["raters"] == ["1", "2"]
    by_name = {picture["picture"]: picture for picture in report["pictures"]}
    assert by_name["inner-glove-on"]["counts"]["wrong"] == 8
    assert by_name["enter-room"]["interval"][0] > 0.67
    run(ward, "audit", "pictures", "ratings.csv", "--threshold", "0.3")


def test_a_faulty_table_is_told_line_by_line(run, ward):
    (ward / "ratings.csv").write_text(
        "form,number,picture,reader,rater,category\nA,1,hand-rubb,7,1,correct\nA,2,hand-wash,7,1,corect\n",
        encoding="utf-8",
    )
    message = run(ward, "audit", "pictures", "ratings.csv", expect=2).stderr
    assert "ratings.csv:2" in message
    assert "Did you mean 'hand-rub'" in message
    assert "ratings.csv:3" in message
    assert "Did you mean 'correct'" in message
    assert "TR-5" in run(ward, "explain", "TR-5").stdout


def test_typing_errors_are_answered_with_what_exists(run, ward):
    assert "Did you mean picture-trial" in run(ward, "draw", "--sheet", "picture-trail", expect=2).stderr
    message = run(ward, "draw", "--sheet", "pictures", "--paper", "A1", expect=1).stderr
    assert "A4 or Letter, not with --paper A1" in message
