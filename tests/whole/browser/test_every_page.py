"""Every kind of page in every language: open to all, by keyboard alone, and from files with scripts off."""

import pytest
from page_checks import assert_all_controls_reached, assert_open_to_all, assert_whole_without_scripts
from site_samples import EVERY_PAGE


@pytest.mark.parametrize(("tag", "kind"), EVERY_PAGE)
def test_a_page_is_open_to_all(phone, violations, tag, kind):
    assert_open_to_all(phone, violations, tag, kind)


@pytest.mark.parametrize(("tag", "kind"), EVERY_PAGE)
def test_the_tabulator_reaches_every_control_in_the_order_of_the_page(phone, tag, kind):
    assert_all_controls_reached(phone, tag, kind)


@pytest.mark.parametrize(("tag", "kind"), EVERY_PAGE)
def test_without_scripts_and_without_a_server_all_is_there(scriptless, folder, tag, kind):
    assert_whole_without_scripts(scriptless, folder, tag, kind)
