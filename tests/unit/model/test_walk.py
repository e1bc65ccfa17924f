"""Where steps are shown: with the person who does them. The cases are the demo's own, no source."""

from datetime import date

from signage.model.library import Action, Actor, Phase, Protocol, Step
from signage.model.walk import zones_of_steps


def protocol(*steps, people):
    return Protocol(
        id="waste",
        code="P6",
        title="Waste",
        revision=1,
        owner="nurse",
        review_by=date(2027, 5, 31),
        ward="ward",
        people=people,
        ends_in="dirty-side",
        phases=(Phase(id="out", title="Out", theme="plain", steps=steps),),
    )


def step(name, **action):
    return Step(id=name, text=name, picture="bin", actions=(Action(**action),))


INSIDE = Actor(id="inside", role="wearer", starts_in="dirty-side")
PORTER = Actor(id="porter", role="assistant", starts_in="waste-room")
OBSERVER = Actor(id="observer", role="observer", starts_in="anteroom")


def test_a_step_is_shown_where_the_person_is_who_does_it():
    shown = zones_of_steps(
        protocol(
            step("gloves", verb="don", by="porter", item="gloves"),
            step("tie", verb="say", by="inside"),
            step("hand-over", verb="handover", by="inside", on="porter", item="bag"),
            step("wash", verb="hygiene", by="porter", agent="wash"),
            people=(INSIDE, PORTER),
        )
    )
    assert shown == {
        "gloves": "waste-room",
        "tie": "dirty-side",
        "hand-over": "dirty-side",
        "wash": "waste-room",
    }


def test_a_move_takes_only_the_person_who_moves():
    shown = zones_of_steps(
        protocol(
            step("go", verb="move", by="porter", to="corridor"),
            step("tie", verb="say", by="inside"),
            step("call", verb="say", by="porter"),
            people=(INSIDE, PORTER),
        )
    )
    assert shown == {"go": "corridor", "tie": "dirty-side", "call": "corridor"}


def test_what_an_observer_does_is_shown_where_the_person_is_whom_it_is_about():
    shown = zones_of_steps(
        protocol(
            step("look", verb="inspect", by="observer", on="porter"),
            step("call", verb="say", by="observer"),
            people=(INSIDE, PORTER, OBSERVER),
        )
    )
    assert shown == {"look": "waste-room", "call": "dirty-side"}


def test_an_observer_who_reads_the_sheet_is_where_the_observer_is():
    shown = zones_of_steps(protocol(step("call", verb="say", by="observer"), people=(OBSERVER, INSIDE)))
    assert shown == {"call": "anteroom"}


def test_the_last_move_is_shown_where_it_starts():
    shown = zones_of_steps(
        protocol(
            step("in", verb="move", by="inside", to="clean-side"),
            step("out", verb="move", by="inside", to="corridor"),
            people=(INSIDE,),
        )
    )
    assert shown == {"in": "clean-side", "out": "clean-side"}
