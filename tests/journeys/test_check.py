"""The faults that a check must name, all in one report, and a library that is clean."""

import json
import re

LONG = "Take off the extraordinarily uncomfortable waterproof hood together with everything underneath now"


def replace_in(path, old, new):
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def empty_translation(path, message):
    text = path.read_text(encoding="utf-8")
    text, count = re.subn(rf'(msgctxt "{message}"\nmsgid "[^"]*"\nmsgstr )"[^"]+"', r'\1""', text)
    assert count == 1
    path.write_text(text, encoding="utf-8")


def forget_step(path, step):
    text = path.read_text(encoding="utf-8")
    spoiled, count = re.subn(rf"      - step: {step}\n(?:        .*\n|\n)+?(?=      - step: )", "", text)
    assert count == 1
    path.write_text(spoiled, encoding="utf-8")


def is_tried(problem):
    return problem["locale"] in {"en-XA", "ar-XB"}


def checked(run, folder, expect=0):
    return json.loads(run(folder, "check", "--format", "json", expect=expect).stdout)


def test_a_library_without_faults_is_clean(run, small):
    result = checked(run, small)
    assert result["counts"]["S1"] == result["counts"]["S2"] == 0
    # a wall slot is read from farther than the one paper of this library can carry; stand-in languages are
    # longer than any, and warn
    told = {(p["code"], p["severity"]) for p in result["problems"] if not p["in_work"] and not is_tried(p)}
    assert told <= {("SH-19", "S3")}
    # Bengali is in work and has a few faults on purpose
    assert {p["locale"] for p in result["problems"] if p["in_work"]} == {"bn"}


def test_words_letters_lengths_orders_and_content_are_named_in_one_report(run, small):
    protocol = small / "content/protocols/layered-protection.yaml"
    empty_translation(small / "locales/fr/LC_MESSAGES/content.po", "layered-protection/hood-off/text")
    replace_in(protocol, "Take off the hood", LONG)
    replace_in(protocol, "Take off the apron", "Take off the apron 𓀀")
    forget_step(protocol, "rub-after-outer")
    replace_in(protocol, "review-by: 2027-05-31", "review-by: 2020-06-30")
    replace_in(small / "content/wards/lantern-bay.yaml", "margin: 5 mm", "margin: 20 mm")
    (small / "content/approvals.yaml").write_text("a: [", encoding="utf-8")
    (small / "locales/sw/LC_MESSAGES").mkdir(parents=True)
    problems = checked(run, small, expect=1)["problems"]

    named = [p for p in problems if p["step"] == "hood-off" and p["locale"] == "fr"]
    assert named
    assert named[0]["path"].endswith("content.po")
    assert named[0]["line"]

    assert any("U+13000" in p["message"] and p["step"] == "apron-off" for p in problems)

    named = [p for p in problems if p["step"] == "hood-off" and " mm" in p["message"]]
    assert named
    assert named[0]["locale"] == "en"

    assert [(p["code"], p["step"]) for p in problems if p["code"].startswith("HH")] == [("HH-1", "hood-off")]

    content = {p["code"]: p for p in problems if p["code"].startswith("CN")}
    assert {code: p["path"].rsplit("/", 1)[-1] for code, p in content.items()} == {
        "CN-2": "layered-protection.yaml",
        "CN-7": "lantern-bay.yaml",
        "CN-9": "approvals.yaml",
        "CN-10": "sw",
    }


def test_faults_of_several_files_come_in_one_report(run, demo):
    replace_in(demo / "content/kit.yaml", "kind: glove", "kind: glov")
    replace_in(demo / "content/protocols/clean-hands.yaml", "title:", "titel:")
    message = run(demo, "check", expect=2).stderr
    assert "kit.yaml" in message
    assert "clean-hands.yaml" in message
    assert "glove" in message
