from dataclasses import replace

import pytest

from signage.check.sheet_rules import type_floor
from signage.compose.part_names import PART_NAMES
from signage.drawing.marks import Group, TextMark
from signage.drawing.roles import GroupRole, TypeRole
from signage.ground.geometry import Box

TEXT = TextMark("Take off", "en", False, (), 5, "#000000", TypeRole.HEADLINE, 700, 20, 20, Box(0, 0, 9, 9))


def test_a_misspelt_role_is_refused_where_it_is_written():
    for write in (lambda: replace(TEXT, role="headlin"), lambda: Group((), role="stepp")):
        with pytest.raises(ValueError, match=r"headlin|stepp"):
            write()
    assert Group((), role="step").role is GroupRole.STEP


def test_every_role_of_a_text_has_a_floor_and_a_plain_name():
    assert set(TypeRole) == type_floor.FLOORS.keys()
    assert {*TypeRole, GroupRole.PICTURE} == PART_NAMES.keys()


def test_texts_of_a_narrow_step_have_roles_of_their_own():
    assert TypeRole.CAUTION.on_strip is TypeRole.STRIP_CAUTION
