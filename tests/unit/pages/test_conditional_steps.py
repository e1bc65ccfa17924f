from dataclasses import replace
from datetime import date
from functools import lru_cache

from changed_demo import changed_project
from site_samples import UNEXAMINED

from signage.pages.practice.pages import plan_practice
from signage.pages.shared_pages import is_what_if
from signage.pages.site import build_site
from signage.produce.publish import publication_of

CHANGES = {
    "rub-before-kit": {"when": "if-soiled"},
    "gloves-on": {"when": "if-torn"},
    "soak-up": {"critical": True},
}


@lru_cache(maxsize=1)
def made():
    return changed_project(CHANGES, protocol="spill")


@lru_cache(maxsize=1)
def pages():
    """Pages of the changed protocol, although a rub that is only sometimes done makes it unsafe."""
    publication, _ = publication_of(made(), date(2026, 11, 26), ["en", "fr"])
    files = build_site(replace(publication, left_out=frozenset()), UNEXAMINED).files
    return {str(path): data.decode() for path, data in files.items() if str(path).endswith(".html")}


def test_a_condition_neither_makes_a_what_if_page_nor_takes_exercises_away():
    library, protocol = made().library, made().library.protocols["spill"]
    assert not any(is_what_if(library, protocol, phase) for phase in protocol.phases)
    practised = {
        step.id
        for each in plan_practice(library, protocol, UNEXAMINED)
        for step in getattr(each, "steps", ())
    }
    assert practised == {step.id for step in protocol.steps}


def test_every_page_of_a_conditional_step_says_when_it_is_done():
    shown = {
        tag: [
            path
            for path, text in pages().items()
            if path.startswith(f"{tag}/")
            and 'class="condition"' in text
            and words in text.replace("\xa0", " ")
        ]
        for tag, words in {"en": "Only if soiled", "fr": "Seulement en cas de souillure"}.items()
    }
    for tag, found in shown.items():
        wanted = {
            "p4/",
            "p4/rub-before-kit/",
            "full-view/p4/",
            "practice/p4/order-clean-up-1/",
        }
        assert {f"{tag}/{path}index.html" for path in wanted} <= set(found)


def test_a_bin_without_a_letter_has_its_name_on_the_pages():
    page = pages()["en/p4/soak-up/index.html"]
    assert "Waste bag" in page
    assert "Sac à déchets" in pages()["fr/p4/soak-up/index.html"].replace("\xa0", " ")
