import re
from collections import Counter
from pathlib import Path

import pytest

from signage.ground.errors import UnreadableInputError
from signage.load.library import load_library

PICTURES = ("hand-rub", "apron-on", "apron-off", "enter-room")

SOUND = {
    "library.yaml": """\
name: Mill House
source-language: en
training-address: http://mill.internal:8080
papers: [A4]
locales:
  en: {owner: language lead, state: in-use}
  ar: {owner: language lead, state: in-work, numerals: arab, register: formal}
""",
    "kit.yaml": """\
garments:
  tunic:
    name: tunic
    kind: clothes
    covers: [trunk]
    barrier: no
  gloves:
    name: gloves
    kind: glove
    covers: [hands]
  apron:
    name: apron
    kind: apron
    covers: [trunk]
    over: [tunic]
    fasteners: [tie]
    checks: [length]
    technique: tear-front
    pictures: {don: apron-on}
items:
  cloth: {name: cloth, kind: supply}
""",
    "policy.yaml": """\
policy:
  min-rub: {value: 20, source: house rule 1, owner: ward lead}
  hygiene-each: {value: yes, source: house rule 2, owner: ward lead}
  agents-on-skin: {value: [rub, wash], source: house rule 3, owner: ward lead}
""",
    "terms.yaml": """\
terms:
  apron:
    source: apron
    approved: {ar: [مئزر]}
""",
    "wards/mill.yaml": """\
ward: mill
name: Mill ward
zones:
  hall: {name: Hall, class: clean, floor: clean}
  room: {name: Room, class: contaminated, floor: dirty, air: hazardous, requires: [apron]}
doors:
  - {from: hall, to: room}
fixtures:
  bin-a: {kind: bin, zone: room, code: A, accepts: [apron, cloth], capacity: 5, opening: pedal}
  bin-x: {kind: bin, zone: room}
  seat: {kind: chair, zone: room, designated: dirty}
slots:
  wall: {at: hall, width: 900 mm, height: 1.2 m, reading-distance: 150 cm, light: 300, centre-height: 1.5 m}
readers: {en: 3}
printers:
  office: {papers: [A4], margin: 5 mm, colour: no, duplex: yes}
""",
    "protocols/apron.yaml": """\
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
phases:
  - phase: put-on
    title: Put on
    theme: don
    notes: {hall: Close the door.}
    steps:
      - step: rub
        text: Rub for {time}
        picture: hand-rub
        do: hygiene
        agent: rub
        layer: skin
        seconds: min-rub
      - step: tie
        text: Tie the {item}
        picture: apron-on
        critical: yes
        do:
          - {do: don, item: apron}
          - {do: fasten, item: apron, part: tie}
""",
}
"""A sound library of one file each; tests put one faulty file in the place of a sound one."""

_MARK = re.compile(r"#! (.*)$")


@pytest.fixture
def library(tmp_path, monkeypatch):
    """Writes the sound library, with some files replaced, and loads it as the folder ``content``."""
    monkeypatch.chdir(tmp_path)

    class Shelf:
        def write(self, **files):
            for name, text in (SOUND | {key.replace("__", "/"): text for key, text in files.items()}).items():
                self.put(name, text)

        def put(self, name, text):
            path = Path("content") / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(text if isinstance(text, bytes) else text.encode())

        def load(self, pictures=PICTURES, rules=None):
            return load_library(Path("content"), pictures, rules)

        def problems(self, pictures=PICTURES, rules=None):
            try:
                self.load(pictures, rules)
            except UnreadableInputError as error:
                return list(error.problems)
            return []

        def check(self, name, text):
            """The problems of the library with this one file replaced are those its lines announce.

            A line ends in ``#! LD-13:9`` where a problem LD-13 is expected at its column 9, more of
            them separated by spaces. Returns the problems for a look at their words.
            """
            self.write()
            self.put(name, text)
            found = self.problems()
            assert all(problem.message and problem.hint for problem in found)
            read = Counter((str(problem.place), problem.code) for problem in found)
            expected = Counter(announced(name, text))
            assert not expected - read, "announced and not found"
            assert not read - expected, "found and not announced"
            return found

    return Shelf()


def announced(name, text):
    """Place and code of every problem that the lines of a faulty file announce."""
    expected = []
    for number, line in enumerate(text.splitlines(), start=1):
        mark = _MARK.search(line)
        for each in mark.group(1).split() if mark else ():
            code, column = each.split(":")
            expected.append((f"content/{name}:{number}:{column}", code))
    return expected
