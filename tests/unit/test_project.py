"""A project keeps open what is asked for again, and no more than that."""

import weakref

import demo
import pytest

from signage import project as projects
from signage.project import open_project


@pytest.fixture
def opened(monkeypatch):
    monkeypatch.setattr(projects, "LANGUAGES_AT_HAND", 2)
    return open_project(demo.ROOT / "content", demo.ROOT / "locales")


def test_words_of_languages_that_nobody_asks_for_any_more_are_let_go(opened):
    source, french = opened.source, opened.wording("fr")
    protocol = next(iter(opened.library.protocols.values()))
    opened.context(protocol, "fr")
    assert opened.wording("fr") is french
    opened.wording("ar")
    assert opened.wording("fr") is french
    gone = weakref.ref(french)
    del french
    for tag in ("hi", "am"):
        opened.wording(tag)
    assert gone() is None
    assert opened.source is opened.wording("en") is source
    assert opened.context(protocol, "fr").wording.content(f"{protocol.id}/title")


def test_words_about_local_documents_are_in_the_code_only_of_protocols_that_point_to_one(opened):
    """Else a word of the programme would make every printed sheet doubtful."""
    protocols = opened.library.protocols
    pointing = {
        name
        for name, protocol in protocols.items()
        if "interface/local-documents" in opened.context(protocol, "fr").wording.texts
    }
    assert pointing == {"layered-protection", "contact-room", "take-off-with-help"}
    assert pointing == {name for name, protocol in protocols.items() if protocol.pointers}
