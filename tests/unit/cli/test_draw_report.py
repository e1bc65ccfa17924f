"""What draw says of sheets that it prints: nothing that is known against them goes unsaid."""

GLOVES = "content/protocols/gloves.yaml"
POSTER = "draw --sheet poster --paper A4 --locale en"


def rewrite(ward, old, new):
    path = ward / GLOVES
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new), encoding="utf-8")


def test_a_draft_tells_what_stands_against_its_approval(ward, signage):
    assert not signage(POSTER).err
    rewrite(ward, "text: Put on the gloves", "text: The gloves")
    told = signage(POSTER)
    assert told.status == 1
    assert "Draft with findings: gloves, en" in told.err
    line = (ward / GLOVES).read_text(encoding="utf-8").split("text: The gloves")[0].count("\n") + 1
    assert f"{GLOVES}:{line}:15: WD-41 " in told.err


def test_a_review_that_is_due_is_told_and_fails_nothing(ward, signage):
    """Else the first command of README would fail two years from now, though nothing is wrong."""
    import re

    text = (ward / GLOVES).read_text(encoding="utf-8")
    (ward / GLOVES).write_text(re.sub(r"review-by: \S+", "review-by: 2020-06-30", text), encoding="utf-8")
    told = signage(POSTER)
    assert told.status == 0
    assert "CN-2" in told.err
