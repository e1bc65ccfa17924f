import pytest


def test_every_fault_of_a_policy_file_is_found_at_its_place(library):
    library.check(
        "policy.yaml",
        """\
policy:
  min-rub: {value: 20, source: rule 1, owner: lead}
  min-wash: {value: soon, source: rule 1, owner: lead}            #! LD-13:21
  glove-hygiene-limit: {value: [5], source: rule 1, owner: lead}  #! LD-13:32
  hygiene-each: {value: 1, source: rule 1, owner: lead}           #! LD-13:25
  respirator-last: {value: yes, source: rule 1}                   #! LD-12:20
  soil-needs-wash: {value: yes, owner: lead}                      #! LD-12:20
  chlorine-on-skin: {source: rule 1, owner: lead}                 #! LD-12:21
  observer-for-removal: {value: , source: rule 1, owner: lead}    #! LD-13:33
  agents-on-skin: {value: rub, source: rule 1, owner: lead}       #! LD-13:27
  agents-on-glove: {value: [rub, bleach], source: r, owner: l}    #! LD-14:34
  critical-marks: {value: exposures, source: r, owner: l}         #! LD-14:27
  hygeine-each: {value: yes, source: rule 1, owner: lead}         #! LD-11:3
  night-light: {value: {a: b}, source: rule 1, owner: lead}       #! LD-13:24
  "": {value: 1, source: rule 1, owner: lead}                     #! LD-15:3
""",
    )


def test_a_nearly_known_value_gets_a_suggestion(library):
    (problem,) = library.check(
        "policy.yaml",
        """\
policy:
  min-rub: {value: 20, source: rule 1, owner: lead}
  hygiene-eachs: {value: yes, source: rule 1, owner: lead}   #! LD-11:3
""",
    )
    assert "Did you mean 'hygiene-each'?" in problem.hint


@pytest.mark.parametrize(
    ("written", "value"),
    [
        ("yes", True),
        ("false", False),
        ("12", 12),
        ("012", "012"),
        ("1.5", 1.5),
        ("1_000", "1_000"),
        ("off", "off"),
        ("'12'", "12"),
        ('"no"', "no"),
        ("[a, '1']", ("a", "1")),
        ("2027-05-31", "2027-05-31"),
        ("99999999999999999999", "99999999999999999999"),
    ],
)
def test_a_value_of_the_hospitals_own_is_read_as_it_is_written(library, written, value):
    library.write()
    library.put(
        "policy.yaml",
        "policy:\n  min-rub: {value: 20, source: r, owner: o}\n"
        f"  ours: {{value: {written}, source: r, owner: o}}\n",
    )
    read = library.load().policy["ours"]
    assert (read.value, type(read.value)) == (value, type(value))
    assert (read.source, read.owner) == ("r", "o")
    assert read.at("value").column == 17
