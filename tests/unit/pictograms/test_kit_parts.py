from types import ModuleType

import pytest
from pydantic import ValidationError

from signage.pictograms.kit.nodes import Blob, flatten, group
from signage.pictograms.kit.parts import PART_MODULES, part_named, part_names
from signage.pictograms.kit.registry import part, parts_of

PARTS = [part_named(name) for name in part_names()]


def pigments(node):
    return {operation.pigment for operation in flatten(node)}


def test_every_part_draws_with_its_defaults():
    assert [each.name for each in PARTS if not pigments(each.draw()) - {"ground"}] == []


def test_every_part_says_what_it_is():
    assert [each.name for each in PARTS if "." not in each.summary and not each.summary.endswith(":")] == []


def test_every_part_with_a_style_can_be_the_item_of_a_step():
    styled = {each.name: group(each.draw(style="accent"), role="item") for each in PARTS if each.takes_style}
    assert styled
    assert [name for name, item in styled.items() if "accent" not in pigments(item)] == []


def test_arguments_are_checked_by_name_and_type():
    arguments = part_named("hand-open").arguments
    assert arguments.model_validate({"style": "tone", "arm": 20}).style == "tone"
    with pytest.raises(ValidationError, match="colour"):
        arguments.model_validate({"colour": "red"})
    with pytest.raises(ValidationError, match="style"):
        arguments.model_validate({"style": "green"})


def test_two_parts_cannot_share_a_name():
    @part("hand-open")
    def another() -> Blob:
        """Another hand."""
        return Blob("ink", ())

    module = ModuleType("more_hands")
    module.another = another
    with pytest.raises(ValueError, match="two parts are named 'hand-open'"):
        parts_of((*PART_MODULES, module))


def test_an_unknown_part_is_none():
    assert part_named("hand-opne") is None


@pytest.mark.parametrize("name", ["tick", "prohibition", "clock"])
def test_signs_with_a_right_way_round_stay_so_when_mirrored(name):
    from signage.ground.geometry import mirroring

    plain = [operation.path for operation in flatten(part_named(name).draw(centre=(60, 48)))]
    moved = [
        operation.path
        for operation in flatten(group(part_named(name).draw(centre=(36, 48)), transform=mirroring(48)))
    ]
    for first, second in zip(plain, moved, strict=True):
        for one, other in zip(first, second, strict=True):
            assert one[1:] == pytest.approx(other[1:])
