"""References that lead nowhere, or to a thing of another kind."""

PROTOCOL = """\
protocol: apron
code: P1
title: Apron on and off
revision: 1
owner: ward lead
review-by: 2027-05-31
ward: mill
people:
  wearer: {role: wearer, starts-in: hal, wears: [tunics, cloth]}   #! LD-16:37 LD-16:50 LD-17:58
ends-in: rooms                                     #! LD-16:10
phases:
  - phase: put-on
    title: Put on
    theme: don
    seconds: hygiene-each                          #! LD-17:14
    notes: {hall: Close the door., yard: Wait.}    #! LD-16:36
    steps:
      - step: one
        text: One
        picture: hand-rub
        do:
          - {do: don, item: aprons}                #! LD-16:29
          - {do: don, item: cloth}                 #! LD-17:29
          - {do: doff, item: apron, bin: seat}     #! LD-17:42
          - {do: doff, item: apron, bin: bin-z}    #! LD-16:42
          - {do: doff, item: apron, together: coat}   #! LD-16:47
          - {do: sit, chair: bin-a}                #! LD-17:30
          - {do: sit, chair: sofa}                 #! LD-16:30
          - {do: move, to: seat}                   #! LD-16:28
          - {do: hygiene, agent: rub, layer: apron}      #! LD-17:46
          - {do: hygiene, agent: rub, layer: glove}      #! LD-16:46
          - {do: hygiene, agent: rub, part: knees}       #! LD-16:45
          - {do: hygiene, agent: rub, seconds: min-rubb} #! LD-16:48
          - {do: hygiene, agent: rub, by: nurse}         #! LD-16:43
          - {do: inspect, item: apron, on: observer}     #! LD-16:44
          - {do: fasten, item: apron, part: zip}         #! LD-16:45
          - {do: check, item: apron, check: seal}        #! LD-16:45
          - {do: touch, target: nose}                    #! LD-16:33
          - {do: disinfect, fixture: bin-q}              #! LD-16:38
          - {do: branch, to: two}                        #! LD-16:30
          - {do: discard, item: cloth, bin: bin-a}
"""


def test_every_reference_of_a_protocol_is_judged(library):
    library.check("protocols/apron.yaml", PROTOCOL)


def test_the_message_says_what_the_thing_is_and_what_was_wanted(library):
    found = library.check("protocols/apron.yaml", PROTOCOL)
    by_line = {problem.place.line: problem for problem in found}
    assert by_line[24].message == "'seat' is a chair; a bin or tub of the protocol's ward was wanted."
    assert by_line[24].hint == "There are: bin-a, bin-x."
    assert by_line[22].message == "'aprons' is not a garment of kit.yaml."
    assert by_line[22].hint == "Did you mean 'apron'?"
    assert by_line[30].message.startswith("'apron' is a garment that does not cover the hands; skin or")


def test_an_unknown_ward_hides_the_references_into_it(library):
    library.write()
    library.put("protocols/apron.yaml", PROTOCOL.replace("ward: mill", "ward: mil"))
    found = library.problems()
    messages = [problem.message for problem in found]
    assert "'mil' is not a ward of this library." in messages
    assert not any("zone" in message or "chair" in message for message in messages)


def test_references_into_an_unreadable_file_are_not_judged(library):
    library.write()
    library.put("wards/mill.yaml", "ward: [\n")
    library.put("kit.yaml", b"\xff")
    library.put("protocols/apron.yaml", PROTOCOL)
    lines = {problem.place.line for problem in library.problems() if "apron.yaml" in problem.place.path}
    assert lines == {15, 32, 33, 34, 35}
