"""Direction overrides can make a code read differently from what is stored: refused."""

import pytest
from text_samples import shape_paragraph

from signage.ground.errors import RefusedError
from signage.text.forbidden import find_forbidden


@pytest.mark.parametrize("code", range(0x202A, 0x202F))
def test_embeddings_and_overrides_are_found_with_place_and_name(code):
    (found,) = find_forbidden(f"bin A{chr(code)}")
    assert found.index == 5
    assert f"U+{code:04X}" in found.name
    assert "position 6" in found.message


def test_all_are_found_in_order():
    assert [found.index for found in find_forbidden("\u202eab\u202c")] == [0, 3]


def test_isolates_and_marks_are_allowed():
    assert find_forbidden("\u2066A1\u2069 \u2067ב\u2069 \u2068x\u2069 \u200e \u200f \u061c") == []


def test_a_text_with_an_override_is_not_shaped_and_the_error_shows_where():
    with pytest.raises(RefusedError, match=r"bin <U\+202E>A.*RIGHT-TO-LEFT OVERRIDE"):
        shape_paragraph("bin \u202eA", "en", 400)
