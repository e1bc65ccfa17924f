"""The faults that a check must name, all in one report, and a library that is clean."""

import json
import re

LONG = "Take off the extraordinarily uncomfortable waterproof hood together with everything underneath now"


def replace_in(path, old, new):
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def forget_step(path, step):
    text = path.read_text(encoding="utf-8")
    spoiled, count = re.subn(rf"      - step: {step}\n(?:        .*\n|\n)+?(?=      - step: )", "", text)
    assert count == 1
    path.write_text(spoiled, encoding="utf-8")


def is_tried(problem):
    return problem["locale"] in {"en-XA", "ar-XB"}


def checked(run, folder, expect=0):
    return json.loads(run(folder, "check", "--format", "json", expect=expect).stdout)


def test_a_library_without_faults_is_clean(run, ward):
    result = checked(run, ward)
    assert result["counts"]["S1"] == result["counts"]["S2"] == 0
    # stand-in languages are longer than any, and warn
    assert [p for p in result["problems"] if not p["in_work"] and not is_tried(p)] == []


def test_words_letters_lengths_orders_and_content_are_named_in_one_report(run, ward):
    protocol = ward / "content/protocols/gloves.yaml"
    replace_in(ward / "content/library.yaml", "in-work", "in-use")
    replace_in(protocol, "Take off the gloves", LONG)
    replace_in(protocol, "Put on the gloves", "Put on the gloves 𓀀")
    forget_step(protocol, "rub-after")
    replace_in(protocol, "review-by: ", "review-by: 2020-06-30  # ")
    replace_in(ward / "content/wards/example-ward.yaml", "margin: 5 mm", "margin: 20 mm")
    (ward / "content/approvals.yaml").write_text("a: [", encoding="utf-8")
    (ward / "locales/sw/LC_MESSAGES").mkdir(parents=True)
    problems = checked(run, ward, expect=1)["problems"]

    named = [p for p in problems if p["step"] == "gloves-off" and p["locale"] == "fr"]
    assert named
    assert named[0]["path"].endswith("content.po")
    assert named[0]["line"]

    assert any("U+13000" in p["message"] and p["step"] == "gloves-on" for p in problems)

    named = [p for p in problems if p["step"] == "gloves-off" and " mm" in p["message"]]
    assert named
    assert named[0]["locale"] == "en"

    assert [(p["code"], p["step"]) for p in problems if p["code"].startswith("HH")] == [
        ("HH-1", "to-corridor")
    ]

    content = {p["code"]: p for p in problems if p["code"].startswith("CN")}
    assert {code: p["path"].rsplit("/", 1)[-1] for code, p in content.items()} == {
        "CN-2": "gloves.yaml",
        "CN-7": "example-ward.yaml",
        "CN-9": "approvals.yaml",
        "CN-10": "sw",
    }


def test_faults_of_several_files_come_in_one_report(run, ward):
    replace_in(ward / "content/kit.yaml", "kind: glove", "kind: glov")
    replace_in(ward / "content/protocols/gloves.yaml", "title:", "titel:")
    message = run(ward, "check", expect=2).stderr
    assert "kit.yaml" in message
    assert "gloves.yaml" in message
    assert "glove" in message
