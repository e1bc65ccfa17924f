"""What pages tell of a long procedure: postures, rules of phases, techniques, hazards, repeated steps."""

from dataclasses import replace
from datetime import date
from functools import lru_cache

import second_hospital
from site_samples import UNEXAMINED

from signage.pages.site import build_site
from signage.produce.publish import publication_of


@lru_cache(maxsize=1)
def pages():
    publication, _ = publication_of(second_hospital.project(), date(2026, 11, 26), ["en"])
    files = build_site(replace(publication, left_out=frozenset()), UNEXAMINED).files
    html = {str(path): data.decode() for path, data in files.items() if str(path).endswith(".html")}
    unseen = str.maketrans({"\xa0": " ", "\u2068": None, "\u2069": None})
    return {path: text.translate(unseen) for path, text in html.items()}


def page(address):
    return pages()[f"en/{address}/index.html"]


def test_posture_pace_and_all_rules_of_a_phase_are_told():
    assert "Roll it down inside out and step out. Stand with your feet apart. Slowly." in page("l1/suit-off")
    assert "Hands stay off your face. Something torn? Take a new one." in page("l1")


def test_a_step_leads_to_the_hand_technique_that_it_follows():
    assert "H1" in page("l1/rub-over")
    assert "../../h1/" in page("l1/rub-over")


def test_a_repeated_step_says_the_words_of_the_first():
    for step in ("rub-after-overshoes", "rub-over"):
        assert "With the sensor, your elbow or your buddy, 20 s." in page(f"l1/{step}"), step


def test_where_hazards_lead_is_what_is_done_if_something_happens():
    for title in ("Box full", "Alone"):
        assert title in page("what-if"), title
    assert "Take off" not in page("what-if").replace("L1", "")


def test_local_documents_are_named_where_nothing_else_says_what_to_do():
    assert "Local documents tell what to do" in page("what-if")
    assert "Fire alarm: name your local document here" in page("what-if")
    assert page("what-if").count("Fire alarm:") == 1
