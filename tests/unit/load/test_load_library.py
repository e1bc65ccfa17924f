import pickle
from datetime import date
from pathlib import Path

from signage.ground.place import Place
from signage.model.library import LocaleState
from signage.model.messages import library_messages


def test_a_sound_library_is_read_whole(library):
    library.write()
    read = library.load()
    assert read.name == "Mill House"
    assert read.source_locale == "en"
    assert read.papers == ("A4",)
    assert read.locales["ar"].state is LocaleState.IN_WORK
    assert (read.locales["ar"].numerals, read.locales["ar"].register) == ("arab", "formal")
    assert list(read.garments) == ["tunic", "gloves", "apron", "cloth"]
    assert read.garments["apron"].over == ("tunic",)
    assert read.garments["apron"].pictures == {"don": "apron-on"}
    assert read.garments["tunic"].barrier is False
    assert read.garments["cloth"].covers == ()
    assert read.garments["cloth"].barrier is False
    assert read.policy["min-rub"].value == 20
    assert read.policy["hygiene-each"].value is True
    assert read.policy["agents-on-skin"].value == ("rub", "wash")
    assert read.terms[0].approved == {"ar": ("مئزر",)}


def test_a_ward_is_read_in_millimetres(library):
    library.write()
    ward = library.load().wards["mill"]
    slot = ward.slots[0]
    assert (slot.width, slot.height, slot.reading_distance, slot.centre_height) == (900, 1200, 1500, 1500)
    assert (slot.light, slot.zone) == (300.0, "hall")
    assert (ward.doors[0].start, ward.doors[0].end) == ("hall", "room")
    assert (ward.zones["room"].zone_class, ward.zones["hall"].air) == ("contaminated", "ok")
    assert ward.fixtures["bin-a"].accepts == ("apron", "cloth")
    assert ward.readers == {"en": 3}
    assert (ward.printers[0].margin, ward.printers[0].colour, ward.printers[0].duplex) == (5, False, True)


def test_a_protocol_is_read_with_seconds_from_policy_and_both_ways_to_write_do(library):
    library.write()
    protocol = library.load().protocols["apron"]
    assert (protocol.code, protocol.revision, protocol.review_by) == ("P1", 1, date(2027, 5, 31))
    assert protocol.people[0].wears == ("tunic",)
    rub, tie = protocol.steps
    assert (rub.action.verb, rub.action.seconds, rub.action.by) == ("hygiene", 20, "wearer")
    assert [action.verb for action in tie.actions] == ["don", "fasten"]
    assert (rub.critical, tie.critical) == (False, True)
    assert protocol.phases[0].notes == {"hall": "Close the door."}


def test_every_message_of_a_library_knows_its_exact_place(library):
    library.write()
    places = {message.context: str(message.place) for message in library_messages(library.load())}
    assert places["library/name"] == "content/library.yaml:1:7"
    assert places["kit/apron/name"] == "content/kit.yaml:12:11"
    assert places["kit/cloth/name"] == "content/kit.yaml:21:17"
    assert places["ward/mill/zone/hall"] == "content/wards/mill.yaml:4:16"
    assert places["apron/title"] == "content/protocols/apron.yaml:3:8"
    assert places["apron/phase/put-on/title"] == "content/protocols/apron.yaml:13:12"
    assert places["apron/rub/text"] == "content/protocols/apron.yaml:18:15"


def test_fields_of_actions_and_keyed_entries_know_their_places(library):
    library.write()
    read = library.load()
    fasten = read.protocols["apron"].steps[1].actions[1]
    assert fasten.at("verb") == Place("content/protocols/apron.yaml", 30, 18)
    assert fasten.at("part") == Place("content/protocols/apron.yaml", 30, 45)
    assert fasten.at("by") == fasten.place == Place("content/protocols/apron.yaml", 30, 13)
    assert read.garments["gloves"].place == Place("content/kit.yaml", 7, 3)
    assert read.protocols["apron"].phases[0].at("notes/hall").column == 19
    assert read.wards["mill"].at("readers/en") == Place("content/wards/mill.yaml", 14, 15)
    assert read.locales["ar"].at("numerals") == Place("content/library.yaml", 7, 56)
    assert read.at("source_locale") == Place("content/library.yaml", 2, 18)


def test_faults_of_several_files_stand_in_one_report_in_the_order_of_files_and_lines(library):
    library.write(
        **{
            "library.yaml": "name: [\n",
            "kit.yaml": "garments:\n  apron: {name: apron, kind: aprn}\n",
            "policy.yaml": "policy:\n  min-rub: {value: soon, source: rule, owner: lead}\n",
            "protocols__second.yaml": "protocol: apron\n",
        }
    )
    found = library.problems()
    codes = [(str(problem.place), problem.code) for problem in found]
    assert ("content/library.yaml:2:1", "LD-8") in codes
    assert ("content/kit.yaml:2:30", "LD-14") in codes
    assert ("content/policy.yaml:2:20", "LD-13") in codes
    assert ("content/protocols/second.yaml:1:11", "LD-9") in codes
    assert ("content/protocols/second.yaml:1:1", "LD-12") in codes
    assert [problem.place for problem in found] == sorted(problem.place for problem in found)


def test_what_a_broken_file_declares_is_not_missed_elsewhere(library):
    library.write(**{"kit.yaml": "garments: [\n"})
    assert {problem.place.path for problem in library.problems()} == {"content/kit.yaml"}


def test_a_faulty_entry_still_counts_as_declared(library):
    library.write()
    library.put(
        "kit.yaml", "garments:\n  apron: {name: 7, kind: apron}\n  tunic: {name: tunic, kind: shirt}\n"
    )
    codes = [problem.code for problem in library.problems()]
    assert "LD-14" in codes
    assert not any("'apron' is not" in problem.message for problem in library.problems())


def test_problems_name_protocol_and_step(library):
    library.write()
    path = Path("content/protocols/apron.yaml")
    path.write_text(path.read_text().replace("picture: apron-on", "picture: apron-of"))
    (problem,) = library.problems()
    assert (problem.protocol, problem.step, problem.code) == ("apron", "tie", "LD-20")
    assert problem.hint == "Did you mean 'apron-off'?"


def test_pictures_are_left_unjudged_where_they_are_not_known(library):
    library.write()
    assert library.problems(pictures=None) == []
    assert {problem.code for problem in library.problems(pictures=())} == {"LD-20"}


def test_terms_may_be_absent(library):
    library.write()
    Path("content/terms.yaml").unlink()
    assert library.load().terms == ()


def test_a_library_can_be_sent_to_another_process(library):
    library.write()
    read = library.load()
    copy = pickle.loads(pickle.dumps(read))  # noqa: S301 - our own bytes
    assert copy == read
    assert copy.protocols["apron"].steps[0].at("text") == read.protocols["apron"].steps[0].at("text")
