def test_every_fault_of_a_ward_file_is_found_at_its_place(library):
    library.check(
        "wards/mill.yaml",
        """\
ward: mill
name: Mill ward
zones:
  hall: {name: Hall, class: clean, floor: dirtyy}           #! LD-14:43
  room:
    name: Room
    class: contaminated
    floor: dirty
    requires: [apron, aprons]                               #! LD-16:23
    no-skin: [nose]                                         #! LD-14:15
  Loft: {name: Loft, class: clean, floor: clean}            #! LD-15:3
  shed: {name: "{zone}", class: clean, floor: clean}        #! LD-19:16
doors:
  - {from: hall, to: rooms}                                 #! LD-16:22
  - {from: hal, to: room, lock: yes}                        #! LD-16:12 LD-11:27
  - {from: hall}                                            #! LD-12:5
fixtures:
  bin-a: {kind: bin, zone: room, code: A, accepts: [towel]} #! LD-16:53
  bin-c: {kind: bin, zone: room, capacity: 0, opening: knee}  #! LD-13:44 LD-14:56
  bin-x: {kind: bin, zone: room, code: A}                   #! LD-9:40
  seat: {kind: chair, zone: attic, designated: dirty}       #! LD-16:29
  bin-y: {kind: bin, zone: room, name: "{bin}"}             #! LD-19:40
  mat: {kind: mat, zone: room, contact-seconds: 30 s}       #! LD-13:49
  bed: {kind: bed, zone: room, code: a}                     #! LD-14:15 LD-15:38
slots:
  wall:
    at: hall
    width: 900                                              #! LD-13:12
    height: 1,2 m                                           #! LD-13:13
    reading-distance: 0 m                                   #! LD-13:23
    light: bright                                           #! LD-13:12
    centre-height: 200 m                                    #! LD-13:20
    sheets: [apron/put-on, apron/take-off, gown]            #! LD-16:28 LD-16:44
readers: {en: 3, fr: 2, e: 1}                               #! LD-16:18 LD-15:25
printers:
  office: {papers: [A4, B5], margin: 5mm, colour: false, duplex: maybe}   #! LD-14:25 LD-13:66
""",
    )


def test_two_zones_may_each_have_a_fixture_with_the_same_code(library):
    library.check(
        "wards/mill.yaml",
        """\
ward: mill
name: Mill ward
zones:
  hall: {name: Hall, class: clean, floor: clean}
  room: {name: Room, class: contaminated, floor: dirty}
doors: []
fixtures:
  bin-a: {kind: bin, zone: room, code: A}
  bin-b: {kind: bin, zone: hall, code: A}
""",
    )


def test_a_list_in_place_of_a_mapping_is_said_to_be_one(library):
    library.write()
    library.put("wards/mill.yaml", "ward: mill\nname: Mill\nzones: [hall]\ndoors: {from: hall}\n")
    messages = [problem.message for problem in library.problems() if problem.place.path.endswith("mill.yaml")]
    assert "'zones' is a list; a mapping was wanted." in messages
    assert "'doors' is a mapping; a list was wanted." in messages


def test_a_file_that_holds_a_single_text_is_reported(library):
    library.write()
    library.put("wards/mill.yaml", "just words\n")
    (problem,) = [p for p in library.problems() if p.place.path.endswith("mill.yaml")]
    assert problem.message == "The file is a text; a mapping was wanted."
    assert str(problem.place) == "content/wards/mill.yaml:1:1"


def test_every_fault_of_views_openings_and_models_is_found_at_its_place(library):
    library.check(
        "wards/mill.yaml",
        """\
ward: mill
name: Mill ward
zones:
  hall: {name: Hall, class: clean, floor: clean, sees: [room, roof]}   #! LD-16:63
  room: {name: Room, class: contaminated, floor: dirty, sees: hall}    #! LD-13:63
doors:
  - {from: hall, to: room, window: glass, opening: kick}               #! LD-13:36 LD-14:52
fixtures:
  bin-a: {kind: bin, zone: room, code: A}
  seat: {kind: chair, zone: room}
models: {gloves: thick, coat: long}                                    #! LD-16:18 LD-16:25
""",
    )
