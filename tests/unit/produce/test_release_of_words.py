"""What the words of a protocol do to its sheets: a verb turned round refuses them, a waiver excuses an S2."""

from datetime import date

from signage.load.starter import starter_files
from signage.model.mark import Mark
from signage.produce.release import Releases
from signage.project import open_project

TODAY = date(2027, 3, 1)
WAIVER = """\
waivers:
  - {code: WD-41, protocol: gloves, step: gloves-on, locale: en, reason: r, role: ward lead, expires: %s}
"""


def release(folder, headline, waiver=None):
    for name, data in starter_files().items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data.replace(b"text: Put on the gloves", b"text: " + headline.encode()))
    if waiver is not None:
        (folder / "content" / "waivers.yaml").write_text(WAIVER % waiver)
    project = open_project(folder / "content", folder / "locales")
    found = Releases(project, TODAY).of("gloves", "en")
    return found, [problem.code for problem in found.facts.problems if problem.code.startswith("WD-")]


def test_a_headline_that_says_the_opposite_refuses_the_sheets(tmp_path):
    found, codes = release(tmp_path, "Take off the gloves")
    assert set(codes) == {"WD-40", "WD-60"}, "it is also the headline of another step"
    assert found.decision.mark is Mark.REFUSED
    assert found.decision.on_request is Mark.PROOF


def test_a_headline_without_an_approved_verb_is_excused_by_a_waiver_that_holds(tmp_path):
    assert release(tmp_path / "none", "The gloves")[1] == ["WD-41"]
    assert release(tmp_path / "holds", "The gloves", "2027-03-01")[1] == []
    assert release(tmp_path / "over", "The gloves", "2027-02-28")[1] == ["WD-41"]
