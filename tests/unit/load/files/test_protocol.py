"""Faulty protocols; each line that earns a problem announces it as code and column."""

from pathlib import Path

import pytest

from signage.model.messages import library_messages

HEAD = """\
protocol: apron
code: P1
title: Apron on and off
revision: 1
owner: ward lead
review-by: 2027-05-31
ward: mill
people:
  wearer: {role: wearer, starts-in: hall, wears: [tunic]}
ends-in: room
"""

STEPS = f"""\
{HEAD}phases:
  - phase: put-on
    title: Put on
    theme: don
    steps:
"""


def test_every_fault_of_the_head_is_found_at_its_place(library):
    library.check(
        "protocols/apron.yaml",
        """\
protocol: apron
code: p-1                                    #! LD-15:7
title: Apron {item}                          #! LD-19:8
revision: 0                                  #! LD-13:11
owner: >                                     #! LD-13:8

review-by: 31.05.2027                        #! LD-13:12
ward: mills                                  #! LD-16:7
people:
  wearer: {role: nurse, starts-in: hall}     #! LD-14:18
  Anna: {role: observer, starts-in: hall}    #! LD-15:3
ends-in: room
sources:
  - {title: Guide, publisher: House, year: 2014 CE}   #! LD-13:44
  - {title: Guide, publisher: House}                  #! LD-12:5
phases:
  - phase: put-on
    title: Put on
    theme: dof                               #! LD-14:12
    layout: list                             #! LD-14:13
    seconds: twenty-ish                      #! LD-16:14
    rule-kind: warning                       #! LD-14:16
    notes: {hall: ""}                        #! LD-13:19
    steps: []                                #! LD-13:12
""",
    )


def test_a_day_that_does_not_exist_is_refused(library):
    library.write()
    library.put("protocols/apron.yaml", HEAD.replace("2027-05-31", "2027-02-30"))
    messages = [problem.message for problem in library.problems()]
    assert "'review-by': '2027-02-30' is not a day of the calendar." in messages


def test_every_fault_of_a_step_is_found_at_its_place(library):
    library.check(
        "protocols/apron.yaml",
        STEPS
        + """\
      - step: rub
        text: Rub both hands
        pciture: hand-rub                    #! LD-11:9
        picture: hand-rub
        do: hygiene
        agent: soap                          #! LD-14:16
        seconds: 20 s                        #! LD-13:18
        agnet: rub                           #! LD-11:9
      - step: Tie_It                         #! LD-15:15
        text: ""                             #! LD-13:15
        picture: hand-rubb                   #! LD-20:18
        when: sometimes                      #! LD-14:15
        critical: no                         #! LD-14:19
        negation: never                      #! LD-13:19
        do: dof                              #! LD-14:13
        item: apron
      - text: No name                        #! LD-12:9 LD-12:9 LD-12:9
      - just a text                          #! LD-13:9
      - step: empty
        text: Nothing
        picture: hand-rub
        do:                                  #! LD-13:12
      - step: list
        text: List
        picture: hand-rub
        item: apron                          #! LD-18:9
        do:
          - {do: don, item: apron, speed: 3} #! LD-11:36
          - {item: apron}                    #! LD-12:13
          - don                              #! LD-13:13
      - step: none
        text: List
        picture: hand-rub
        do: []                               #! LD-13:13
""",
    )


def test_keys_that_do_not_fit_their_verb_are_found(library):
    library.check(
        "protocols/apron.yaml",
        STEPS
        + """\
      - step: one
        text: One
        picture: hand-rub
        do: stand                            #! LD-18:13
        chair: seat                          #! LD-18:9
        need: water                          #! LD-18:9
      - step: two
        text: Two
        picture: hand-rub
        do:
          - {do: sit}                        #! LD-18:18
          - {do: check, item: apron}         #! LD-18:18
          - {do: adjust}                     #! LD-18:18
          - {do: hygiene, bin: bin-a}        #! LD-18:18 LD-18:27
          - {do: hygiene, agent: rub, by: wearer, on: wearer}
          - {do: handover, item: cloth}      #! LD-18:18
""".replace("        do: stand                            #! LD-18:13", "        do: stand"),
    )


@pytest.mark.parametrize(
    ("verb", "keys"),
    [
        ("need", "need: fit-tested"),
        ("inspect", ""),
        ("inspect", "item: apron, on: wearer"),
        ("check", "item: apron, check: length"),
        ("don", "item: apron"),
        ("fasten", "item: apron"),
        ("unfasten", "item: apron, part: tie"),
        ("doff", "item: apron, technique: tear-front, together: gloves, bin: bin-a"),
        ("discard", "item: cloth, bin: bin-a"),
        ("hygiene", "agent: wash, layer: gloves, seconds: 40, part: palms, amount: 3 ml"),
        ("touch", "target: eyes"),
        ("touch", "target: seat"),
        ("adjust", "target: apron"),
        ("move", "to: room"),
        ("sit", "chair: seat"),
        ("stand", ""),
        ("disinfect", "fixture: seat, seconds: 60, agent: wipe"),
        ("mat", "seconds: 30"),
        ("wait", "seconds: min-rub"),
        ("say", ""),
        ("handover", "item: cloth, on: wearer"),
        ("replace", "fixture: bin-a"),
        ("branch", "to: apron"),
        ("branch", "to: the-step"),
    ],
)
def test_every_verb_of_the_grammar_is_read_with_its_keys(library, verb, keys):
    library.write()
    action = f"do: {verb}{', ' if keys else ''}{keys}"
    library.put(
        "protocols/apron.yaml",
        f"{STEPS}      - {{step: the-step, text: Do it, picture: hand-rub, {action}}}\n",
    )
    read = library.load().protocols["apron"].steps[0].action
    assert read.verb == verb
    for pair in keys.split(", ") if keys else []:
        key, value = pair.split(": ")
        assert str(getattr(read, key)) == {"min-rub": "20"}.get(value, value)


def test_the_first_person_acts_where_there_is_no_wearer(library):
    library.write()
    text = STEPS.replace("  wearer: {role: wearer", "  porter: {role: assistant")
    library.put(
        "protocols/apron.yaml",
        f"{text}      - {{step: go, text: Go, picture: hand-rub, do: move, to: room}}\n",
    )
    assert library.load().protocols["apron"].steps[0].action.by == "porter"


def test_line_breaks_in_a_text_become_spaces_and_no_break_spaces_stay(library):
    library.write()
    library.put(
        "protocols/apron.yaml",
        STEPS
        + """\
      - step: rub
        text: >
          Rub both
          hands
        detail: "20\u00a0mm   of it "
        picture: hand-rub
        do: say
""",
    )
    step = library.load().protocols["apron"].steps[0]
    assert (step.text, step.detail) == ("Rub both hands", "20\u00a0mm of it")


def test_every_fault_of_origins_things_hazards_and_repetitions_is_found_at_its_place(library):
    library.check(
        "protocols/apron.yaml",
        """\
protocol: apron
code: P1
title: Apron on and off
revision: 1
owner: ward lead
review-by: 2027-05-31
ward: mill
people:
  wearer: {role: wearer, starts-in: hall, comes-from: yard, carries: [pen, watch]}   #! LD-16:55 LD-16:76
things:
  pen: {surface: shiny, stays-in: yard}      #! LD-14:18 LD-16:35
  eyes: {surface: hard}                      #! LD-9:3
hazards:
  bin-full: {branch: apron/no-bin}           #! LD-16:22
  alarm: {}                                  #! LD-18:3
  faint: {branch: put-on}                    #! LD-18:19
  spill: {branch: apron/put-on, local-policy: House rule 4}   #! LD-18:3
  fire: {local-policy: "House rule 5, {bin}"}   #! LD-19:24
ends-in: room
phases:
  - phase: put-on
    title: Put on
    theme: don
    rules: ["Keep the {item} dry.", ""]      #! LD-19:13 LD-13:37
    steps:
      - step: rub
        text: Rub for {time}
        picture: hand-rub
        posture: Feet apart, {time}.
        do: hygiene
        agent: rub
        any-of: [seat, tap]                  #! LD-16:24
        technique-of: apron/put-on           #! LD-16:23
      - {step: rub-2, again: rub}
      - {step: rub-3, again: rub-2}          #! LD-17:30
      - {step: rub-4, again: rinse, text: Rub}   #! LD-16:30 LD-18:37
      - step: wipe
        text: Wipe it
        picture: hand-rub
        do:
          - {do: wipe, agent: wipe}          #! LD-18:18
          - {do: wipe, thing: cup}           #! LD-16:31
          - {do: raise, item: apron, part: bib}    #! LD-16:44
          - {do: adjust, item: apron, part: tie}   #! LD-16:45
          - {do: put-down, thing: pen}
          - {do: touch, target: pen}
""",
    )


def test_a_step_that_repeats_another_takes_its_words_and_movements_and_keeps_its_own_name(library):
    library.write()
    told = (Path("content") / "protocols" / "apron.yaml").read_text(encoding="utf-8")
    library.put(
        "protocols/apron.yaml",
        f"{told}      - {{step: rub-2, again: rub, when: if-soiled, rationale: House rule 6.}}\n",
    )
    loaded = library.load()
    protocol = loaded.protocols["apron"]
    rub, _tie, again = protocol.steps
    assert (again.id, again.text, again.picture, again.actions) == (
        "rub-2",
        rub.text,
        rub.picture,
        rub.actions,
    )
    assert (again.id, again.told_as) == ("rub-2", "rub")
    assert (again.when, again.rationale) == ("if-soiled", "House rule 6.")
    assert again.place.line > rub.place.line
    assert again.at("text") == rub.at("text")
    contexts = [message.context for message in library_messages(loaded)]
    assert contexts.count("apron/rub/text") == 1
    assert not [context for context in contexts if "rub-2" in context]


def test_a_hand_technique_is_followed_by_reference_with_its_time(library):
    library.write()
    told = (Path("content") / "protocols" / "apron.yaml").read_text(encoding="utf-8")
    hands = told.replace("protocol: apron", "protocol: hands").replace("code: P1", "code: P2")
    hands = hands.replace("theme: don", "theme: hands\n    layout: hand-technique\n    seconds: 25")
    library.put("protocols/hands.yaml", hands)
    library.put("protocols/apron.yaml", told.replace("seconds: min-rub", "technique-of: hands/put-on"))
    action = library.load().protocols["apron"].steps[0].action
    assert (action.seconds, action.technique_of) == (25, "hands/put-on")
