"""What is kept is what would be made anew, whatever somebody has changed meanwhile."""

import re
import shutil
from datetime import date
from pathlib import Path

import pytest
from demo import ROOT
from hypothesis import given, settings
from hypothesis import strategies as st

from signage.ground.errors import SignageError
from signage.ground.kept import Kept
from signage.produce.check import look_at_all
from signage.produce.draw import draw_all, jobs_for
from signage.produce.kept import KeptResults
from signage.produce.release import Releases
from signage.produce.requests import SheetRequest
from signage.project import open_project

DAY = date(2026, 11, 28)
P6 = "waste-out"
SCENE = """\
theme: hands
focus: bag
gloss: {who: anyone, does: look at, what: bag}
alt: A round bag.
layers:
  - {id: bag, shape: [{circle: [48, 48, 38]}]}
  - {id: face, shape: [{circle: [48, 48, 29]}], style: paper, outline: 2.4}
"""

REQUESTS = (
    SheetRequest(P6, "en", "poster", "over-the-line", "A4"),
    SheetRequest(P6, "fr", "step-cards", "", "A6"),
    SheetRequest(P6, "ar", "pocket-checklist", "", "A4"),
    SheetRequest(P6, "fr", "step-cards", "", "A4", "mono"),
)

EDITS = (
    # what an author changes: a text, an order, a value, a name, a place, a comment
    ("content/protocols/waste-out.yaml", r"(?m)^(        text: )(.+)$", r"\1\2 now"),
    ("content/protocols/waste-out.yaml", r"(?m)^(        why: )(.+)$", r"\1Because."),
    ("content/protocols/waste-out.yaml", r"(?m)^(        picture: )([a-z-]+)$", r"\1own-bag"),
    ("content/protocols/waste-out.yaml", r"(?m)^(revision: )\d+$", r"\g<1>7"),
    ("content/protocols/waste-out.yaml", r"(?m)^(review-by: ).+$", r"\g<1>2026-01-31"),
    ("content/protocols/waste-out.yaml", r"(?m)\A", "# A comment moves every line down.\n"),
    ("content/protocols/waste-out.yaml", r"(?m)^(      - step: )([a-z-]+)$", r"\1\2-too"),
    ("content/protocols/spill.yaml", r"(?m)^(        text: )(.+)$", r"\1\2 now"),
    ("content/policy.yaml", r"(?m)value: (\d+)", r"value: 1\1"),
    ("content/library.yaml", r"(?m)^(name: ).+$", r"\1Another Hospital"),
    ("content/library.yaml", r"numerals: arab", "numerals: latn"),
    ("content/library.yaml", r"lantern-bay\.internal", "other.internal"),
    ("content/kit.yaml", r"(?m)^(    name: )(.+)$", r"\1\2 two"),
    ("content/wards/lantern-bay.yaml", r"(?m)(name: )(Waste[a-z ]*)", r"\1Bin\2"),
    ("content/scenes/own-bag.yaml", r"38", "30"),
    ("content/scenes/own-bag.yaml", r"A round bag", "A small bag"),
    # what a translator changes
    ("locales/fr/LC_MESSAGES/content.po", r'(?m)^msgstr "(.+)"$', r'msgstr "\1 donc"'),
    ("locales/fr/LC_MESSAGES/content.po", r'(?m)^msgstr "(.+)"$', 'msgstr ""'),
    ("locales/ar/LC_MESSAGES/interface.po", r'(?m)^msgstr "(.+)"$', r'msgstr "\1 \1"'),
    ("locales/ar/LC_MESSAGES/content.po", r"(?m)\A", "# A comment.\n"),
)


@pytest.fixture(scope="module")
def kept(tmp_path_factory):
    return Kept(tmp_path_factory.mktemp("kept"))


def spoil(home, edit, place):
    """One of the places where the pattern stands, changed."""
    name, pattern, new = edit
    path = home / name
    text = path.read_text(encoding="utf-8")
    found = list(re.finditer(pattern, text))
    if found:
        match = found[place % len(found)]
        path.write_text(text[: match.start()] + match.expand(new) + text[match.end() :], encoding="utf-8")


def seen(home, output, results_of):
    """All that a person gets to see of the library: what is drawn, what is refused and what is found."""
    try:
        project = open_project(home / "content", home / "locales")
        results = results_of(project)
        releases = Releases(project, DAY, results)
        made = list(draw_all(project, jobs_for(releases, REQUESTS), output, results, workers=1))
        found = look_at_all(results, ("own-bag", *REQUESTS), None).problems
    except SignageError as error:
        return str(error)
    drawn = [{**each.as_json(), "path": str(getattr(each, "path", "-"))[len(str(output)) :]} for each in made]
    files = {path.relative_to(output): path.read_bytes() for path in Path(output).rglob("*.pdf")}
    return drawn, files, found


@settings(max_examples=5)
@given(st.lists(st.tuples(st.sampled_from(EDITS), st.integers(0, 2000)), min_size=1, max_size=3))
def test_kept_results_are_those_of_a_fresh_run_after_any_edit(kept, tmp_path_factory, edits):
    home = tmp_path_factory.mktemp("library")
    for name in ("content", "locales"):
        shutil.copytree(ROOT / name, home / name)
    (home / "content" / "scenes").mkdir()
    (home / "content" / "scenes" / "own-bag.yaml").write_text(SCENE, encoding="utf-8")
    for edit, place in edits:
        spoil(home, edit, place)
    first = seen(home, home / "first", lambda project: KeptResults(project, kept))
    again = seen(home, home / "again", lambda project: KeptResults(project, kept))
    fresh = seen(home, home / "fresh", KeptResults)
    assert first == fresh
    assert again == fresh
    shutil.rmtree(home)
