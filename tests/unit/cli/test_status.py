"""The first command of the day, on the small library that ``signage start`` writes."""

import re

import pytest


@pytest.fixture(autouse=True)
def _day(monkeypatch):
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1795651200")


def test_it_fits_a_hundred_columns_and_ends_with_what_is_next(ward, signage):
    told = signage("status")
    assert told.status == 0, told.err
    assert max(map(len, told.out.splitlines())) <= 100
    table, _, tasks = told.out.partition("Next, the most pressing first")
    assert "en " in table
    assert "draft" in table
    assert re.search(r"^ +1\. \S", tasks, re.MULTILINE)


def test_json_holds_what_the_contract_names(ward, signage):
    told = signage("status --format json").json
    assert {"protocols", "next"} <= told.keys()
    for protocol in told["protocols"].values():
        assert protocol["findings"].keys() == {"S1", "S2", "S3"}
        for sheet in protocol["locales"].values():
            assert sheet["words"].keys() == {"missing", "doubtful", "translated", "checked"}
            assert sheet.keys() >= {
                "mark", "signed_by", "signed_on", "review_by", "revision", "mounted", "obsolete"
            }  # fmt: skip
    assert all(task.keys() >= {"role", "what", "path"} for task in told["next"])


def test_a_role_sees_its_own_duties_and_a_mistyped_one_is_told(ward, signage):
    everything = signage("status --format json").json["next"]
    roles = {role for task in everything for role in task["role"].split(" or ")}
    for role in roles & {"icn", "ward-lead"}:
        mine = signage(f"status --as {role} --format json").json["next"]
        assert mine == [task for task in everything if role in task["role"].split(" or ")]
    refused = signage("status --as icm")
    assert refused.status == 2
    assert "Did you mean icn?" in refused.err


def test_a_folder_without_a_library_and_a_folder_for_the_page_are_told(ward, signage):
    assert "library.yaml" in signage("status --content nowhere").err
    refused = signage("status --html content")
    assert refused.status == 2
    assert "is a folder" in refused.err


def test_the_page_holds_every_duty_and_every_language(ward, signage):
    told = signage("status --html day.html --format json").json
    page = (ward / "day.html").read_text(encoding="utf-8")
    for code, protocol in told["protocols"].items():
        assert f'<span class="code">{code}</span>' in page
        assert all(f'lang="{tag}"' in page for tag in protocol["locales"])
    assert page.count("<li><p class=") == len(told["next"])
    assert "http" not in page
