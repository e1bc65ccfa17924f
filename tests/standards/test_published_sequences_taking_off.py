"""Published orders of taking off: they pass, and the slips that a trained observer would stop are found.

The source of each order stands beside it in ``published_sequences``. The orders differ from one another;
each is held against the facts and the policy that it takes for granted, and none is the measure of another.
"""

from dataclasses import replace

import pytest
from published_sequences import TAKING_OFF, off, take_off

EACH = pytest.mark.parametrize("published", TAKING_OFF, ids=lambda published: published.id)
WHOLE = [p for p in TAKING_OFF if p.order[-1] == "hygiene"]

EXPECTED = {
    # A part of a list: the new pair of gloves is still on when the part ends.
    "CDC for viral haemorrhagic fevers, change of inner gloves": {("LY-7", "new-inner-gloves")},
    # The list takes boots off with inner gloves. The warning says so, and lets it pass.
    "graphic of 2014": {("CT-7", "boots")},
    # The list goes on from the outer gloves to eyes and mouth without hygiene. It says nothing of leaving the
    # room first, so the inner gloves are bared, and contaminated, in the room.
    "Italy 2020": {("CT-3", "eye-protection"), ("CT-3", "respirator"), ("RP-2", "respirator")},
    # The list changes outer gloves without hygiene between old and new.
    "China 2020": {("HH-1", "change-outer-gloves")},
}


@EACH
def test_nothing_is_found_beyond_what_the_list_itself_leaves_open(published):
    assert take_off(published) == EXPECTED.get(published.id, set())


@pytest.mark.parametrize("published", WHOLE, ids=lambda p: p.id)
def test_an_item_left_on(published):
    for index, word in enumerate(published.order):
        if word in published.items and published.items.count(word) == 1:
            found = {code for code, _step in take_off(published.without(index))}
            assert "LY-7" in found, word


@pytest.mark.parametrize("published", WHOLE, ids=lambda p: p.id)
def test_last_entry_is_hygiene_on_bare_hands(published):
    found = take_off(published.without(len(published.order) - 1)) - take_off(published)
    assert found == {("HH-6", published.order[-2])}


@pytest.mark.parametrize("published", WHOLE, ids=lambda p: p.id)
def test_eye_protection_before_respirator(published):
    assert published.order.index("eye-protection") < published.order.index("respirator")
    found = take_off(published.exchanged("eye-protection", "respirator"))
    assert ("LY-1", "respirator") in found


@pytest.mark.parametrize("published", WHOLE, ids=lambda p: p.id)
def test_gown_or_coverall_before_respirator(published):
    body = next(word for word in published.order if word.startswith(("coverall", "gown")))
    assert published.order.index(body) < published.order.index("respirator")
    found = take_off(published.exchanged(body, "respirator"))
    assert ("RP-2", "respirator") in found


@pytest.mark.parametrize("name", ["graphic of 2014", "Italy 2020"])
def test_outer_gloves_before_inner_gloves(name):
    published = off(name)
    found = take_off(published.exchanged("outer-gloves", "inner-gloves"))
    assert ("LY-1", "inner-gloves") in found


def test_apron_before_coverall():
    published = off("graphic of 2014")
    found = take_off(published.exchanged("apron", "coverall"))
    assert ("LY-1", "coverall") in found


def test_gloves_before_gown_where_cuffs_lie_over_sleeves():
    found = take_off(off("CDC example 1").exchanged("outer-gloves", "gown"))
    assert ("LY-1", "gown") in found


def test_two_lists_disagree_on_eye_protection_and_gown_and_both_pass():
    """CDC example 1 takes the eye protection off before the gown, CDC 2020 after it."""
    first, second = off("CDC example 1").order, off("CDC 2020").order
    assert first.index("eye-protection") < first.index("gown")
    assert second.index("eye-protection") > second.index("gown")
    assert take_off(off("CDC example 1")) == take_off(off("CDC 2020")) == set()


@pytest.mark.parametrize(
    ("name", "last"),
    [
        ("CDC example 1", "respirator"),
        ("CDC 2020", "respirator"),
        ("graphic of 2014", "respirator"),
        ("Italy 2020", "inner-gloves"),
        ("China 2020", "inner-gloves"),
    ],
)
def test_the_last_item_differs_between_lists(name, last):
    assert off(name).items[-1] == last


class TestHygieneAfterEveryItem:
    """The graphic of 2014 cleans hands after every single item."""

    published = off("graphic of 2014")
    positions = [i for i, word in enumerate(published.order) if word == "hygiene"][:-1]

    def test_every_item_has_one(self):
        assert len(self.positions) + 1 == len(self.published.items) == 8

    @pytest.mark.parametrize("position", positions)
    def test_one_left_out(self, position):
        found = take_off(self.published.without(position)) - take_off(self.published)
        (finding,) = found
        assert finding == ("HH-1", self.published.order[position + 1])

    def test_chlorine_on_outer_gloves_left_out(self):
        found = take_off(self.published.without(self.published.order.index("chlorine")))
        assert ("HH-9", "outer-gloves") in found


class TestRespiratorAfterLeavingTheRoom:
    """CDC 2020: leave the room, clean hands, then eye protection and respirator."""

    published = off("CDC 2020")

    def test_taken_off_inside(self):
        found = take_off(self.published.without(self.published.order.index("leave")))
        assert ("RP-1", "respirator") in found

    def test_hands_not_cleaned_after_leaving(self):
        found = take_off(self.published.without(self.published.order.index("hygiene")))
        assert found == {("HH-9", "eye-protection")}


class TestChangeOfInnerGloves:
    """CDC pages for viral haemorrhagic fevers: disinfect, remove, hand rub on bare hands, new pair."""

    published = off("CDC for viral haemorrhagic fevers, change of inner gloves")

    def test_gloves_not_disinfected_before(self):
        found = take_off(self.published.without(self.published.order.index("glove-hygiene")))
        assert ("HH-1", "inner-gloves") in found

    def test_bare_hands_not_rubbed(self):
        found = take_off(self.published.without(self.published.order.index("hygiene")))
        assert ("HH-1", "new-inner-gloves") in found

    def test_no_observer(self):
        alone = replace(self.published, has_observer=False)
        found = take_off(alone.without(alone.order.index("observer")))
        assert ("RO-3", "gown") in found


def test_a_change_of_gloves_passes_where_local_policy_asks_for_less():
    published = off("China 2020")
    lenient = replace(published, policy={"hygiene-each": False})
    assert take_off(lenient) == set()
