from signage.load.placeholders import FILLED_BY
from signage.model.messages import PLACEHOLDERS

PROTOCOL = """\
protocol: apron
code: P1
title: Apron {time}                          #! LD-19:8
revision: 1
owner: "{owner}"                             #! LD-19:8
review-by: 2027-05-31
ward: mill
people:
  wearer: {role: wearer, starts-in: hall}
ends-in: room
phases:
  - phase: put-on
    title: Put on {item}                     #! LD-19:12
    theme: don
    seconds: 20
    rule: Wait {time}                        #! LD-19:11
    notes: {hall: "Wait {time}"}             #! LD-19:19
    steps:
      - step: one
        text: Rub for {time}
        detail: Rub for {tme}                #! LD-19:17
        why: Take {amount} of it             #! LD-19:14
        caution: Not {} and not } or {       #! LD-19:18 LD-19:18 LD-19:18
        picture: hand-rub
        do: hygiene
        agent: rub
        seconds: 20
      - step: two
        text: Put {item} into {bin}
        detail: Go to {zone}                 #! LD-19:17
        why: For {time}                      #! LD-19:14
        rationale: Braces {here} are free
        picture: hand-rub
        do: doff
        item: apron
        bin: bin-a
      - step: three
        text: Go to {zone}, take {amount}
        detail: Into {bin}                   #! LD-19:17
        picture: hand-rub
        do:
          - {do: move, to: room}
          - {do: hygiene, agent: rub, amount: 3 ml}
          - {do: doff, item: apron, bin: bin-x}
"""


def test_placeholders_stand_only_where_something_fills_them(library):
    library.check("protocols/apron.yaml", PROTOCOL)


def test_the_cure_names_what_is_wanted(library):
    found = library.check("protocols/apron.yaml", PROTOCOL)
    by_line = {problem.place.line: problem for problem in found}
    assert by_line[21].hint == "Did you mean '{time}'?"
    assert by_line[22].message == "{amount} stands in 'why', but it needs an action with 'amount'."
    assert by_line[31].hint == "Add 'seconds:' to the step, or write the words out."
    assert by_line[39].message == "{bin} stands in 'detail', but 'bin-x' has neither code nor name to show."
    assert "takes no placeholders" in by_line[3].message


def test_every_placeholder_of_the_model_has_a_rule():
    assert set(FILLED_BY) == PLACEHOLDERS
