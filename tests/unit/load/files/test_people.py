"""people.yaml: roles, what they may do, and what they name."""

from signage.model.people import authors_of, translators_of

SOUND = """\
people:
  icn: {initials: IN, role: infection-control nurse, writes: [P1], mounts: yes}
  ward-lead: {initials: WL, signs: yes, public-key: 11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=}
  all-hands: {initials: AH, writes: [all], translates: [en], checks: [en], audits: yes}
"""
"""The public key is that of TEST 1 in RFC 8032, section 7.1."""


def test_roles_are_read_with_what_they_may_do(library):
    library.write()
    library.put("people.yaml", SOUND)
    people = library.load().people
    assert list(people) == ["icn", "ward-lead", "all-hands"]
    assert (people["icn"].initials, people["icn"].writes, people["icn"].signs) == ("IN", ("apron",), False)
    assert people["ward-lead"].signs
    assert authors_of(people, "apron") == ("icn", "all-hands")
    assert translators_of(people, "en") == ("all-hands",)
    assert str(people["ward-lead"].place) == "content/people.yaml:3:3"


def test_what_does_not_exist_is_told_with_a_cure(library):
    library.write()
    for old, new, message, hint in (
        ("[P1]", "[P7]", "'P7' is not the code of a protocol.", "There are: P1."),
        ("[P1]", "[aprn]", "'aprn' is not a protocol of this library, or 'all'.", "Did you mean 'apron'?"),
        ("[en], checks", "[sw], checks", "'sw' is not a locale of library.yaml.", "There are: en"),
        ("initials: WL", "initials: W.L.", "'initials' in 'ward-lead': 'W.L.' is not initials.", "letters"),
        ("11qYA", "1qYA", "is not a public key", "signage approvals make-key"),
        ("signs: yes", "sign: yes", "The key 'sign' is not known in 'ward-lead'.", "Did you mean 'signs'?"),
    ):
        library.put("people.yaml", SOUND.replace(old, new, 1))
        (problem,) = library.problems()
        assert message in problem.message, (new, problem.message)
        assert hint in problem.hint, (new, problem.hint)
        assert problem.place.path == "content/people.yaml"


def test_a_library_without_people_and_a_demo_are_told_apart(library):
    library.write()
    loaded = library.load()
    assert not loaded.people
    assert not loaded.is_demo
