import pytest

from signage.model.choices import ActionVerb, PhaseTheme, ZoneClass
from signage.model.library import Action, Actor, Phase, Step, Zone


def test_a_misspelt_choice_is_refused_where_it_is_written():
    for write in (
        lambda: Action(verb="dof"),
        lambda: Phase(id="off", title="Off", theme="dof", steps=()),
        lambda: Phase(id="off", title="Off", theme="doff", steps=(), rule_kind="dof"),
        lambda: Step(id="off", text="Off", picture="off", actions=(), when="dof"),
        lambda: Actor(id="wearer", role="dof", starts_in="room"),
        lambda: Zone(id="dof", name="Dirty side", zone_class="dof", floor="dirty"),
    ):
        with pytest.raises(ValueError, match="dof"):
            write()


def test_a_choice_that_comes_as_text_is_the_value():
    assert Action(verb="doff").verb is ActionVerb.DOFF
    assert Phase(id="off", title="Off", theme="doff", steps=()).theme is PhaseTheme.DOFF
    assert Zone(id="a", name="A", zone_class="clean", floor="clean").zone_class is ZoneClass.CLEAN
