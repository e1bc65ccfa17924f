from datetime import date

import pytest

from signage.ground.problem import Severity

RULES = {
    **dict.fromkeys(("HH-2", "HH-7", "LY-A", "CT-7", "WD-41", "SH-9"), Severity.S2),
    "WD-40": Severity.S1,
}

SOUND = """\
waivers:
  - code: HH-2
    protocol: apron
    step: rub
    reason: The dispenser
      counts the time.
    role: infection-control nurse
    expires: 2027-03-01
  - {code: LY-A, protocol: apron, reason: No order needed., role: ward lead, expires: 2026-12-31}
"""


def test_waivers_are_read_in_the_order_of_the_file(library):
    library.write()
    library.put("waivers.yaml", SOUND)
    first, second = library.load().waivers
    assert (first.code, first.protocol, first.step) == ("HH-2", "apron", "rub")
    assert (first.reason, first.role) == ("The dispenser counts the time.", "infection-control nurse")
    assert first.expires == date(2027, 3, 1)
    assert str(first.place) == "content/waivers.yaml:2:5"
    assert first.at("expires").line == 8
    assert second.step is None


def test_the_file_may_be_left_out_and_may_be_empty_of_waivers(library):
    library.write()
    assert library.load().waivers == ()
    library.put("waivers.yaml", "waivers: []\n")
    assert library.load().waivers == ()


def test_every_fault_of_a_waiver_is_found_at_its_place(library):
    library.check(
        "waivers.yaml",
        """\
waivers:
  - {code: HH-2, protocol: apron, step: rub, reason: r, role: ward lead, expires: 2027-02-30} #! LD-13:83
  - {code: HH-2, protocol: apron, step: rub, reason: r, role: ward lead}                      #! LD-12:5
  - {code: HH-2, protocol: apron, step: rub, role: ward lead, expires: 2027-01-01}            #! LD-12:5
  - {code: HH-2, protocol: apron, reason: r, role: ward lead, expires: soon}                  #! LD-13:72
  - {code: rubbing, protocol: apron, reason: r, role: ward lead, expires: 2027-01-01}         #! LD-15:12
  - {code: HH-2, protocol: aprons, reason: r, role: ward lead, expires: 2027-01-01}           #! LD-16:28
  - {code: HH-2, protocol: apron, step: rubb, reason: r, role: ward lead, expires: 2027-01-01} #! LD-16:41
  - {code: HH-2, protocol: apron, reason: r, name: A. B., role: ward lead, expires: 2027-01-01} #! LD-11:46
  - HH-2                                                                                      #! LD-13:5
""",
    )


@pytest.mark.parametrize(
    ("written", "meant"), [("HH-22", "HH-2"), ("hh-2", "HH-2"), ("LY-B", "LY-A"), ("ct-7", "CT-7")]
)
def test_a_rule_that_does_not_exist_gets_a_suggestion(library, written, meant):
    library.write()
    library.put("waivers.yaml", SOUND.replace("HH-2", written))
    (problem,) = library.problems(rules=RULES)
    assert problem.code == "LD-16"
    assert str(problem.place) == "content/waivers.yaml:2:11"
    assert f"Did you mean '{meant}'?" in problem.hint


def test_a_misspelt_protocol_and_step_get_a_suggestion(library):
    library.write()
    library.put("waivers.yaml", SOUND.replace("protocol: apron\n", "protocol: aprn\n"))
    (problem,) = library.problems()
    assert "Did you mean 'apron'?" in problem.hint
    library.put("waivers.yaml", SOUND.replace("step: rub", "step: rup"))
    (problem,) = library.problems()
    assert "Did you mean 'rub'?" in problem.hint


def test_nothing_is_said_about_protocols_where_one_could_not_be_read(library):
    library.write()
    library.put("waivers.yaml", SOUND)
    library.put("protocols/apron.yaml", "protocol: [apron\n")
    assert [problem.place.path for problem in library.problems()] == ["content/protocols/apron.yaml"]


@pytest.mark.parametrize("name", ["waiver.yaml", "waivers.yml"])
def test_a_misspelt_file_name_is_not_passed_over(library, name):
    library.write()
    library.put(name, SOUND)
    (problem,) = library.problems()
    assert problem.code == "LD-21"
    assert "waivers.yaml" in problem.hint


def test_a_waiver_may_name_any_rule_that_is_not_grave_with_language_and_sheet(library):
    library.write()
    library.put(
        "waivers.yaml",
        "waivers:\n"
        "  - {code: WD-41, protocol: apron, step: rub, locale: en, reason: r, role: l, expires: 2027-01-01}\n"
        "  - {code: SH-9, sheet: poster take-off, reason: r, role: ward lead, expires: 2027-01-01}\n",
    )
    words, sheet = library.load(rules=RULES).waivers
    assert (words.code, words.locale, words.sheet) == ("WD-41", "en", None)
    assert (sheet.protocol, sheet.locale, sheet.sheet) == (None, None, "poster take-off")


def test_a_grave_finding_is_not_waived_nor_one_of_words_in_all_languages(library):
    library.write()
    entry = (
        "  - {code: %s, protocol: apron, step: rub, locale: %s, reason: r, role: l, expires: 2027-01-01}\n"
    )
    written = "waivers:\n" + entry % ("WD-40", "en") + entry % ("WD-41", "eo")
    library.put("waivers.yaml", written + (entry % ("WD-41", "en")).replace("locale: en, ", ""))
    found = library.problems(rules=RULES)
    assert [(problem.code, problem.place.line) for problem in found] == [
        ("LD-22", 2),
        ("LD-16", 3),
        ("LD-12", 4),
    ]
    assert "severity S1" in found[0].message
