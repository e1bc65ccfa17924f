"""Published orders of putting on: they pass, and the slips that a trained observer would stop are found.

The source of each order stands beside it in ``published_sequences``. What holds for all of them was read
off the lists themselves: the respirator comes before the eye protection, the outermost gloves after the
gown or coverall, and gloves last in the ward lists.
"""

import pytest
from published_sequences import PUTTING_ON, on, put_on

EACH = pytest.mark.parametrize("published", PUTTING_ON, ids=lambda published: published.id)

EXPECTED = {
    # These three lists, as quoted, say nothing of hand hygiene before the first item.
    "standard order of four": {("HH-8", "gown")},
    "CDC for viral haemorrhagic fevers, pages 06, 09 and 10": {("HH-8", "boots")},
    "United Kingdom, viral haemorrhagic fevers": {("HH-8", "boots")},
}


@EACH
def test_only_missing_first_hygiene_is_found(published):
    assert put_on(published) == EXPECTED.get(published.id, set())


@EACH
def test_an_item_left_out_is_missed_at_the_door(published):
    for index, word in enumerate(published.order):
        if word in published.items:
            found = put_on(published.without(index)) - put_on(published)
            assert any(code == "EN-4" for code, _step in found), word


WITH_EYE_PROTECTION = [p for p in PUTTING_ON if "eye-protection" in p.order]


@pytest.mark.parametrize("published", WITH_EYE_PROTECTION, ids=lambda p: p.id)
def test_respirator_before_eye_protection(published):
    assert published.order.index("respirator") < published.order.index("eye-protection")
    found = put_on(published.exchanged("respirator", "eye-protection"))
    assert ("LY-2", "respirator") in found


WITH_GOWN = [p for p in PUTTING_ON if {"gown", "coverall"} & set(p.order) and "outer-gloves" in p.order]


@pytest.mark.parametrize("published", WITH_GOWN, ids=lambda p: p.id)
def test_outermost_gloves_after_gown_or_coverall(published):
    outermost = "gown" if "gown" in published.order else "coverall"
    assert published.order.index(outermost) < published.order.index("outer-gloves")
    assert ("LY-2", outermost) in put_on(published.exchanged(outermost, "outer-gloves"))


@pytest.mark.parametrize(
    ("name", "last"),
    [
        ("standard order of four", "outer-gloves"),
        ("CDC 2020, hygiene once", "outer-gloves"),
        ("CDC 2020, hygiene again before gloves", "outer-gloves"),
        ("graphic of 2014", "outer-gloves"),
        ("Italy 2020", "outer-gloves"),
        ("United Kingdom, viral haemorrhagic fevers", "face-shield"),
    ],
)
def test_the_last_item_differs_between_lists_and_both_ends_pass(name, last):
    published = on(name)
    assert published.items[-1] == last
    assert not {code for code, _step in put_on(published)} & {"LY-1", "LY-2", "LY-3"}


@pytest.mark.parametrize("name", ["CDC 2020, hygiene once", "graphic of 2014", "Italy 2020"])
def test_first_hygiene_left_out(name):
    published = on(name)
    found = put_on(published.without(published.order.index("hygiene")))
    assert {code for code, _step in found} == {"HH-8"}


class TestSealCheckDirectlyAfterTheRespirator:
    """29 CFR 1910.134, as a university quotes it: a seal check every time; CDC 2020 puts it next."""

    published = on("CDC 2020, hygiene again before gloves")

    def test_left_out(self):
        index = self.published.order.index("seal-check")
        assert put_on(self.published.without(index)) == {("EN-2", "enter")}

    def test_before_the_respirator(self):
        found = put_on(self.published.exchanged("respirator", "seal-check"))
        assert ("EN-7", "seal-check") in found

    def test_after_the_eye_protection(self):
        found = put_on(self.published.exchanged("seal-check", "eye-protection"))
        assert found == {("EN-8", "seal-check")}


def test_integrity_check_left_out():
    """European Respiratory Review 2020: integrity is checked before anything is put on."""
    published = on("Italy 2020")
    found = put_on(published.without(published.order.index("inspect")))
    assert found == {("EN-1", "inner-gloves"), ("EN-1", "gown")}


def test_jewellery_left_on():
    """European Respiratory Review 2020: jewellery comes off first."""
    published = on("Italy 2020")
    found = put_on(published.without(published.order.index("remove-jewellery")))
    assert found == {("EN-5", "enter")}
