"""What a rehearsal tells a nurse is what README shows, and what drawing then does."""

import re
import shutil

import demo


def test_the_mistake_of_the_readme_is_told_as_it_says_and_refused(tmp_path, monkeypatch, signage):
    for name in ("content", "locales"):
        shutil.copytree(demo.ROOT / name, tmp_path / name)
    path = tmp_path / "content/protocols/layered-protection.yaml"
    text = path.read_text(encoding="utf-8")
    step = text.index("      - step: rub-after-outer")
    path.write_text(text[:step] + text[text.index("      - step:", step + 1) :], encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    told = signage("rehearse P1")
    readme = (demo.ROOT / "README.md").read_text(encoding="utf-8")
    shown = re.search(r"\$ signage rehearse P1\n(.*?)```", readme, re.DOTALL)[1]
    assert told.status == 1
    assert " ".join(told.out.split()).startswith(" ".join(shown.split()))
    assert "are refused, or printed as proofs" in told.out
    assert signage("draw --protocol P1 --locale en --sheet pocket-checklist").status == 1
    assert not list((tmp_path / "output").rglob("*.pdf"))
