"""What a check says of a library as a whole."""

import re
from collections import Counter

LETTERS = {"ii": "ꆈꌠ", "nqo": "ߒߞߏ", "ber-Tfng": "ⴰⴱ"}


def test_a_language_that_no_font_shows_is_one_finding_with_what_to_do(tmp_path, monkeypatch, signage):
    """Its sheets would be boxes only, and a finding a box."""
    monkeypatch.chdir(tmp_path)
    assert signage(f"start ward {' '.join(f'--locale {tag}' for tag in LETTERS)}").status == 0
    monkeypatch.chdir(tmp_path / "ward")
    library = tmp_path / "ward/content/library.yaml"
    library.write_text(library.read_text(encoding="utf-8").replace("in-work", "in-use"), encoding="utf-8")
    for tag, letters in LETTERS.items():
        for file in (tmp_path / "ward/locales" / tag / "LC_MESSAGES").iterdir():
            text = file.read_text(encoding="utf-8")
            filled = re.sub(r'(?m)^(msgid "([^{}\n]+)"\nmsgstr) ""$', rf'\1 "{letters}"', text)
            file.write_text(re.sub(r'(?m)^(msgid "(.+)"\nmsgstr) ""$', r'\1 "\2"', filled), encoding="utf-8")
    problems = signage("check --format json").json["problems"]
    about_fonts = [each for each in problems if each["code"] in {"WD-37", "WD-39", "SH-1", "SH-2"}]
    assert Counter(each["locale"] for each in about_fonts) == dict.fromkeys(LETTERS, 1)
    assert {each["code"] for each in about_fonts} == {"WD-39"}
    assert all("content/fonts" in each["hint"] for each in about_fonts)
    refused = signage("draw --locale ii --proof --format json")
    assert refused.status == 1
    reasons = {each["why"] for each in refused.json["refused"]}
    assert len(reasons) == 1
    assert "content/fonts" in reasons.pop()
    assert "With --proof" not in signage("draw --locale ii").err
