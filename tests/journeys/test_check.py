"""The three faults that a check must name, and a clean demo."""

import json
import re


def replace_in(path, old, new):
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def problems_of(done):
    return json.loads(done.stdout)["problems"]


def test_the_demo_is_clean(run, demo):
    result = json.loads(run(demo, "check", "--format", "json").stdout)
    assert result["counts"]["S1"] == result["counts"]["S2"] == 0
    # one wall slot of the demo is read from farther than any paper that fits it can carry, on purpose
    finished = [problem for problem in result["problems"] if not problem["in_work"]]
    assert {(p["code"], p["severity"]) for p in finished} <= {("SH-19", "S3")}
    # Bengali is in work and has a few faults on purpose
    assert {p["locale"] for p in result["problems"] if p["in_work"]} == {"bn"}


def test_a_deleted_translation_is_named(run, demo):
    path = demo / "locales" / "fr" / "LC_MESSAGES" / "content.po"
    text = path.read_text(encoding="utf-8")
    text, count = re.subn(
        r'(msgctxt "layered-protection/hood-off/text"\nmsgid "[^"]*"\nmsgstr )"[^"]+"', r'\1""', text
    )
    assert count == 1
    path.write_text(text, encoding="utf-8")
    problems = problems_of(run(demo, "check", "--format", "json", expect=1))
    named = [p for p in problems if p["step"] == "hood-off" and p["locale"] == "fr"]
    assert named
    assert named[0]["path"].endswith("content.po")
    assert named[0]["line"]


def test_a_character_without_a_glyph_is_named(run, demo):
    replace_in(demo / "content/protocols/layered-protection.yaml", "Take off the hood", "Take off the hood 𓀀")
    done = run(demo, "check", "--format", "json", expect=1)
    assert any("U+13000" in p["message"] and p["step"] == "hood-off" for p in problems_of(done))


def test_an_overlong_headline_is_named_with_millimetres(run, demo):
    long = (
        "Take off the extraordinarily uncomfortable waterproof hood together with everything underneath now"
    )
    replace_in(demo / "content/protocols/layered-protection.yaml", "Take off the hood", long)
    done = run(demo, "check", "--format", "json", expect=1)
    named = [p for p in problems_of(done) if p["step"] == "hood-off" and " mm" in p["message"]]
    assert named
    assert named[0]["locale"] == "en"


def test_faults_of_several_files_come_in_one_report(run, demo):
    replace_in(demo / "content/kit.yaml", "kind: glove", "kind: glov")
    replace_in(demo / "content/protocols/clean-hands.yaml", "title:", "titel:")
    message = run(demo, "check", expect=2).stderr
    assert "kit.yaml" in message
    assert "clean-hands.yaml" in message
    assert "glove" in message
