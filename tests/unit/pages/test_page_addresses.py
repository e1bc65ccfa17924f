import posixpath

import pytest
from demo import project
from hypothesis import given
from hypothesis import strategies as st

from signage.load.kinds import _CODE
from signage.model.training_path import training_path
from signage.pages import address

PROTOCOL = project().library.protocols["layered-protection"]


def test_a_step_page_stands_where_its_card_says():
    step = PROTOCOL.steps[19]
    assert "/" + address.step_page("ar", PROTOCOL, step) == training_path("ar", PROTOCOL, step)
    assert address.step_page("ar", PROTOCOL, step) == f"ar/p1/{step.id}/"


@pytest.mark.parametrize(
    ("start", "target", "link"),
    [
        ("", "ar/", "ar/index.html"),
        ("ar/p1/apron-off/", "ar/p1/hood-off/", "../hood-off/index.html"),
        ("ar/p1/apron-off/", "", "../../../index.html"),
        ("ar/practice/p1/", "ar/p1/", "../../p1/index.html"),
    ],
)
def test_links_are_relative_and_name_the_file(start, target, link):
    assert address.link_to_file(start, address.file_of(target)) == link
    assert posixpath.normpath(posixpath.join(start, link)) == address.file_of(target)


def test_no_protocol_code_can_take_the_place_of_another_page():
    tag = "en"
    for page in (
        address.full_view(tag, PROTOCOL),
        address.current_sheet(tag, PROTOCOL),
        address.trainer_notes(tag, PROTOCOL),
        address.practice(tag, PROTOCOL),
        address.what_if(tag),
    ):
        folder = page.split("/")[1]
        assert _CODE.fullmatch(folder.upper()) is None, folder


names = st.sampled_from(("ar", "en", "p1", "apron-off", "site-assets", "index.html"))
paths = st.lists(names, max_size=4)


@given(paths, paths.filter(bool))
def test_links_are_those_of_the_standard_library(start, file):
    here, there = "".join(f"{name}/" for name in start), "/".join(file)
    assert address.link_to_file(here, there) == posixpath.relpath(there, here or ".")
