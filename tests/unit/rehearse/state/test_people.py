"""Several people: an assistant's hands, two wearers on one chair, and what happens to whom."""

from dataclasses import replace

import pytest
from rehearsal_edits import (
    demo_library,
    found,
    layered_protection,
    new_step,
    with_action,
    with_fixture,
    with_step_after,
    with_step_before,
    without_steps,
)

from signage.ground.problem import Severity
from signage.model.library import Actor
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.state.level import Level


class TestAnAssistantTakesOffTheHood:
    """Whoever does the movement takes up what the hands meet, and hygiene is due to that person."""

    @pytest.fixture
    def protocol(self):
        assistant = Actor(
            id="assistant",
            role="assistant",
            starts_in="dirty-side",
            wears=("respirator", "inner-gloves"),
            comes_from="anteroom",
        )
        protocol = replace(layered_protection(), people=(*layered_protection().people, assistant))
        protocol = without_steps(protocol, "rub-after-hood")
        return with_action(protocol, "hood-off", by="assistant", on="wearer", technique="front-grab")

    def rub(self):
        return new_step(
            "assistant-rub", "hygiene", by="assistant", agent="rub", layer="inner-gloves", seconds=20
        )

    def test_the_wearer_goes_on_and_hygiene_is_due_to_the_assistant(self, protocol):
        result = rehearse(demo_library(), protocol)
        found = {(f.code, f.step, f.person) for f in result.findings}
        assert ("HH-1", "hood-off", "assistant") in found
        assert not {person for code, _step, person in found if code == "HH-1"} - {"assistant"}

    def test_the_assistants_gloves_take_up_what_the_hood_carries(self, protocol):
        trace = {state.step: state for state in rehearse(demo_library(), protocol).trace}
        assert trace["hood-off"].of("assistant").hands[-1] == ("inner-gloves", Level.CONTAMINATED)
        assert trace["hood-off"].of("wearer").hands[-1] == ("inner-gloves", Level.CLEAN)

    def test_after_the_assistants_hygiene_it_is_not_due(self, protocol):
        protocol = with_step_after(protocol, "hood-off", self.rub())
        assert "HH-1" not in {code for code, _step in found(protocol)}

    def test_from_another_zone_nobody_can_help(self, protocol):
        people = tuple(
            replace(p, starts_in="anteroom") if p.id == "assistant" else p for p in protocol.people
        )
        assert ("RO-2", "hood-off") in found(replace(protocol, people=people))

    def test_the_assistants_own_kit_is_the_matter_of_another_protocol(self, protocol):
        assert ("LY-7", None) not in found(protocol)


class TestTwoWearersOnOneChair:
    """A second wearer sits down after the first; the chair must be turned round between them."""

    @pytest.fixture
    def protocol(self):
        second = Actor(
            id="second", role="wearer", starts_in="clean-side", wears=("scrubs",), comes_from="corridor"
        )
        protocol = replace(layered_protection(), people=(*layered_protection().people, second))
        protocol = with_step_before(
            protocol,
            "to-corridor",
            new_step("first-sits", "sit", chair="clean-chair"),
            new_step("up", "stand"),
        )
        return with_step_after(
            protocol,
            "to-corridor",
            new_step("second-sits", "sit", by="second", chair="clean-chair"),
            new_step("second-up", "stand", by="second"),
            new_step("second-mat", "mat", by="second", seconds=30),
            new_step("second-leaves", "move", by="second", to="corridor"),
        )

    def test_nothing_between(self, protocol):
        assert found(protocol) == [("FX-3", "second-sits")]

    def test_disinfected_between(self, protocol):
        wipe = new_step("wipe", "disinfect", by="second", fixture="clean-chair", seconds=60)
        assert found(with_step_before(protocol, "second-sits", wipe)) == []

    def test_contact_time_not_kept(self, protocol):
        wipe = new_step("wipe", "disinfect", by="second", fixture="clean-chair", seconds=10)
        codes = [code for code, _step in found(with_step_before(protocol, "second-sits", wipe))]
        assert codes == ["FX-4", "FX-3"]


class TestHowBadAWrongBinIs:
    def severity(self, library, step, **changes):
        (finding,) = rehearse(library, with_action(layered_protection(), step, **changes)).findings
        assert finding.code == "BN-3"
        return finding.severity

    def test_gloves_in_another_waste_bin(self):
        assert self.severity(demo_library(), "inner-gloves-off", bin="bin-a") is Severity.S2

    def test_reusable_goggles_in_the_waste(self):
        assert self.severity(demo_library(), "goggles-off", bin="bin-b") is Severity.S1

    def test_reusable_goggles_in_another_tub(self):
        library = with_fixture(demo_library(), "bin-b", kind="tub")
        assert self.severity(library, "goggles-off", bin="bin-b") is Severity.S2

    def test_a_needle_in_the_waste(self):
        library = demo_library()
        needle = replace(library.garments["scrubs"], id="needle", kind="sharps", covers=(), reusable=False)
        library = replace(library, garments={**library.garments, "needle": needle})
        drop = new_step("drop", "discard", item="needle", bin="bin-a")
        protocol = with_step_after(layered_protection(), "rub-outer-first", drop)
        (finding,) = rehearse(library, protocol).findings
        assert (finding.code, finding.severity) == ("BN-3", Severity.S1)


def test_a_person_who_begins_in_the_room_is_contaminated_by_it():
    protocol = without_steps(layered_protection(), *(s.id for s in layered_protection().phases[0].steps))
    everything = ("scrubs", "shoes", "inner-gloves", "coverall", "outer-gloves")
    person = replace(protocol.people[0], starts_in="room", wears=everything)
    protocol = replace(protocol, people=(person, *protocol.people[1:]))
    first = rehearse(demo_library(), protocol).trace[0].of("wearer")
    outside = {worn.garment: worn.outside for worn in first.worn}
    assert outside["coverall"] is outside["outer-gloves"] is outside["shoes"] is Level.CONTAMINATED
    assert outside["inner-gloves"] is outside["scrubs"] is Level.CLEAN
    assert first.soles is Level.CONTAMINATED
