"""How messages call the value that they are about."""

import pytest

HALL = "zones: {hall: {name: Hall, class: clean"
WORDS = {
    HALL + ", floor: wet}}": "'floor' in 'hall': 'wet' is not one of the words",
    HALL + "}}": "The key 'floor' is missing in 'hall'.",
    HALL + ", floor: clean, wall: red}}": "The key 'wall' is not known in 'hall'.",
    HALL + ", floor: clean, no-skin: [nose]}}": "Entry 1 of 'no-skin' in 'hall':",
    "zones: {hall: open}": "'hall' in 'zones' is a text; a mapping was wanted.",
    "zones: {}": "'zones': Here stands a mapping without entries",
    "doors: [{from: hall, to: []}]": "'to' in entry 1 of 'doors': Here stands a list; an identifier",
    "doors: [{from: hall}]": "The key 'to' is missing in entry 1 of 'doors'.",
    "doors: [hall]": "Entry 1 of 'doors' is a text; a mapping was wanted.",
    "doors:": "'doors' has no value.",
    "name: ''": "'name': The text is empty.",
    "readers: {en: many}": "'en' in 'readers': 'many' is not a whole number.",
}


@pytest.mark.parametrize("line", WORDS)
def test_a_message_names_the_value_and_what_holds_it(library, line):
    library.write()
    library.put("wards/mill.yaml", f"ward: mill\n{line}\n")
    messages = [problem.message for problem in library.problems() if problem.place.line == 2]
    assert any(message.startswith(WORDS[line]) for message in messages), messages


def test_a_message_about_an_action_names_its_step(library):
    library.write()
    library.put(
        "protocols/apron.yaml",
        "protocol: apron\nphases:\n  - phase: put-on\n    steps:\n"
        "      - {step: rub, text: Rub, picture: hand-rub, do: hygiene, agent: soap}\n",
    )
    messages = [problem.message for problem in library.problems()]
    assert "'agent' in step 'rub': 'soap' is not one of the words that may stand here." in messages
    assert "The key 'theme' is missing in phase 'put-on'." in messages


def test_what_is_missing_in_braces_is_added_inside_them(library):
    (in_braces,) = library.check(
        "policy.yaml",
        """\
policy:
  min-rub: {value: 20, owner: ward lead}  #! LD-12:12
  hygiene-each: {value: yes, source: house rule 2, owner: ward lead}
""",
    )
    assert in_braces.hint == "Add 'source: …' inside the braces."
    (in_lines,) = library.check(
        "policy.yaml",
        """\
policy:
  min-rub:
    value: 20  #! LD-12:5
    owner: ward lead
""",
    )
    assert in_lines.hint == "Add a line that begins with 'source:'."
