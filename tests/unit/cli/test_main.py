"""Every error is a message on standard error, or one JSON object on standard output, and a status."""

import errno

import pytest

from signage.ground.errors import MissingFromMachineError, RefusedError


@pytest.mark.parametrize(
    ("words", "found"),
    [
        ("check --bogus --format json", "--bogus"),
        ("check --format=json --content", "--content"),
        ("chekc --format=json", "Did you mean 'check'"),
        ("draw --format json --seed x", "--seed"),
        ("draw --format json --locale xx", "There is no locale 'xx'"),
        ("rehearse --format json", "protocol"),
        ("start a b --format json", "unexpected extra argument"),
        ("words add EN --format json", "en"),
        ("words add en_US --format json", "did you mean en-US"),
    ],
)
def test_wrong_usage_is_json_where_json_is_asked_for(ward, signage, words, found):
    told = signage(words)
    assert told.status == told.json["error"]["status"] == 2
    assert found in told.json["error"]["message"]
    assert not told.err


@pytest.mark.parametrize(
    "words", ["check --content json", "draw --output json --bogus", "json", "check json"]
)
def test_json_as_a_value_asks_for_no_json(ward, signage, words):
    told = signage(words)
    assert told.status == 2
    assert not told.out
    assert told.err


def test_unreadable_input_goes_to_standard_error_or_is_all_of_the_json(ward, signage):
    (ward / "content/kit.yaml").write_text("".join(f"key-{n}: 1\n" for n in range(300)), encoding="utf-8")
    told = signage("check")
    assert (told.status, told.out) == (2, "")
    assert told.err.startswith("The input could not be read.")
    assert len(told.err.splitlines()) < 250
    assert "more are not told here" in told.err
    assert len(signage("check --all").err.splitlines()) > 600
    for words in ("check --format=json", "pages --format json", "words progress --format json"):
        problems = signage(words)
        assert problems.status == 2
        assert len(problems.json["problems"]) >= 300
        assert problems.json["counts"]["S1"] >= 300
        assert not problems.err


@pytest.mark.parametrize(
    ("error", "status", "found"),
    [
        (RefusedError("It could hurt."), 1, "It could hurt."),
        (MissingFromMachineError("No font."), 3, "No font."),
        (OSError(errno.ENOSPC, "No space left on device", "output/en/a.pdf"), 3, "output/en/a.pdf: No space"),
        (OSError(errno.ENAMETOOLONG, "File name too long", "x" * 300), 2, "too long"),
        (KeyboardInterrupt(), 130, "Stopped"),
        (MemoryError(), 3, "memory"),
        (ZeroDivisionError("by \x1b nought"), 2, "did not foresee: ZeroDivisionError"),
    ],
)
def test_every_end_of_a_command_is_told_in_both_forms(ward, signage, monkeypatch, error, status, found):
    def fail(*_):
        raise error

    monkeypatch.setattr("signage.project.open_project", fail)
    told = signage("check")
    assert (told.status, told.out) == (status, "")
    assert found in told.err
    assert "\x1b" not in told.err
    assert "Traceback" not in told.err
    told = signage("check --format json")
    assert told.status == told.json["error"]["status"] == status
    assert found in told.json["error"]["message"]
    assert not told.err


@pytest.mark.parametrize(("address", "status"), [("é" * 80, 2), ("a\x1b b", 3), ("192.0.2.1", 3)])
def test_an_address_that_cannot_be_served_is_told_shortly(ward, signage, address, status):
    site = ward / "site"
    site.mkdir()
    (site / "index.html").write_text("x", encoding="utf-8")
    told = signage("serve", "--site", str(site), "--address", address)
    assert told.status == status
    assert "Choose another" in told.err or "Write one" in told.err
    assert "\x1b" not in told.err


def test_nothing_asked_for_is_answered_with_help(signage, ward):
    told = signage("words", "--help")
    assert told.status == 0
    assert "progress" in told.out
    told = signage("words")
    assert told.status == 2
    assert "progress" in told.err + told.out
