"""Faulty kit files; each line that earns a problem announces it as code and column."""

from pathlib import Path


def test_every_fault_of_a_kit_file_is_found_at_its_place(library):
    library.check(
        "kit.yaml",
        """\
garments:
  tunic:
    name: tunic
    kind: cloths                       #! LD-14:11
    covers: [trunk, tail]              #! LD-14:21
    barrier: off                       #! LD-13:14
  gloves: {name: gloves, kind: glove, covers: hands}   #! LD-13:47
  apron:
    name: [apron]                      #! LD-13:11
    kind: apron
    over: [tunic, shirt]               #! LD-16:19
    needs-under: [cloth]               #! LD-17:19
    needs_seat: yes                    #! LD-11:5
    fasteners: [tie, Big Knot]         #! LD-15:22
    checks: [length]
    pictures: {don: apron-of, wear: apron-on}   #! LD-20:21 LD-14:31
  Boots: {name: boots, kind: boots}    #! LD-15:3
  hood: {name: "", kind: hood}         #! LD-13:16
  cap: {kind: cap}                     #! LD-12:8
items:
  cloth: {name: cloth, kind: supply, covers: [hands]}   #! LD-11:38
  gloves: {name: thick gloves, kind: tool}   #! LD-9:3
  skin: {name: skin, kind: tool}       #! LD-9:3
""",
    )


def test_an_unknown_key_and_an_unknown_word_get_a_suggestion(library):
    found = library.check(
        "kit.yaml",
        """\
garments:
  tunic: {name: tunic, kind: clothes}
  gloves: {name: gloves, kind: glove, covers: [hands]}
  apron:
    name: apron
    kind: aprn                #! LD-14:11
    need_under: [tunic]       #! LD-11:5
    fasteners: [tie]
items: {cloth: {name: cloth, kind: supply}}
""",
    )
    hints = {problem.code: problem.hint for problem in found}
    assert hints["LD-14"] == "Did you mean 'apron'?"
    assert hints["LD-11"] == "Did you mean 'needs-under'?"


def test_an_item_named_as_a_garment_is_said_to_be_never_worn(library):
    found = library.check(
        "kit.yaml",
        """\
garments:
  tunic: {name: tunic, kind: clothes}
  gloves: {name: gloves, kind: glove, covers: [hands]}
  apron: {name: apron, kind: apron, over: [cloth], fasteners: [tie]}   #! LD-17:44
items: {cloth: {name: cloth, kind: supply}}
""",
    )
    assert found[0].message == "'cloth' is an item that is not worn; a garment of kit.yaml was wanted."


def test_a_key_without_a_value_is_reported_once(library):
    found = library.check(
        "kit.yaml",
        """\
garments:
  tunic: {name: tunic, kind: clothes}
  gloves: {name: gloves, kind: glove, covers: [hands]}
  apron:
    name: apron
    kind:             #! LD-13:10
    covers:           #! LD-13:12
    fasteners: [tie]
items: {cloth: {name: cloth, kind: supply}}
""",
    )
    assert "has no value" in found[0].message


def test_every_fault_of_parts_fasteners_techniques_and_models_is_found_at_its_place(library):
    library.check(
        "kit.yaml",
        """\
garments:
  tunic: {name: tunic, kind: clothes}
  gloves: {name: gloves, kind: glove, covers: [hands], state: clean}   #! LD-14:63
  apron:
    name: apron
    kind: apron
    covers: [trunk]
    technique: tear-front               #! LD-16:16
    techniques: [straps-back, lift-of]  #! LD-14:31
    fasteners: {tie: {at: [waist], under: [knot]}, strap: {over: tie}}   #! LD-14:28 LD-16:44 LD-11:60
    adjusters: [Head Band]              #! LD-15:17
    parts:
      bib: {raised: [chin], starts: half, over: [shirt]}   #! LD-14:22 LD-14:37 LD-16:50
    models: {long: {features: [Loops]}}   #! LD-12:20 LD-15:32
    model: short                        #! LD-16:12
    checks: [length]
items: {cloth: {name: cloth, kind: supply}}
""",
    )


def test_fasteners_are_written_as_names_or_with_where_they_run(library):
    library.write()
    named = library.load().garments["apron"]
    assert (named.fasteners, named.fastener_sites) == (("tie",), {})
    kit = (Path("content") / "kit.yaml").read_text(encoding="utf-8")
    told = "fasteners: {tie: {at: [trunk], under: [flap]}, flap: {}}\n    parts: {bib: {raised: [neck]}}"
    library.put("kit.yaml", kit.replace("fasteners: [tie]", told))
    garment = library.load().garments["apron"]
    assert garment.fasteners == ("tie", "flap")
    assert garment.fastener_sites == {"tie": ("trunk",)}
    assert garment.fasteners_under == {"tie": ("flap",)}
    assert (garment.parts["bib"].raised, garment.parts["bib"].starts) == (("neck",), "lowered")
    assert garment.parts["bib"].at("raised").line == kit[: kit.index("fasteners")].count("\n") + 2
