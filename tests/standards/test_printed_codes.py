"""Codes of every kind of sheet are decoded from the rendered page by zxing-cpp."""

import pytest
from print_checks import CODED_SHEETS, assert_codes_lead_where_they_say

TAGS = ("en", "ar", "am", "en", "hi")


@pytest.mark.parametrize(("tag", "sheet"), list(zip(TAGS, CODED_SHEETS, strict=True)))
def test_codes_read_at_150_dpi_lead_where_they_say(tag, sheet):
    assert_codes_lead_where_they_say(tag, *sheet)
