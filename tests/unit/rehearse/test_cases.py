"""Small protocols, each with the finding it earns written beside the line that earns it.

A case file bears the code of a rule. Its documents begin with ``fires:`` or ``silent:``; ``# expect: CODE``
on a line says that this line, and no other, has that finding. A document may replace entries of
``small_ward.yaml``.
"""

import re
from collections import Counter
from datetime import date
from pathlib import Path

import pytest
import yaml

from signage.ground.place import Place
from signage.model.garment import Garment, GarmentPart
from signage.model.library import (
    Action,
    Actor,
    Door,
    Fixture,
    Library,
    Phase,
    PolicyValue,
    Protocol,
    Step,
    Thing,
    Ward,
    Zone,
)
from signage.rehearse.rehearsal import rehearse
from signage.rehearse.rules.table import RULES
from signage.rehearse.variations.study import study_protocol

CASES = Path(__file__).with_name("cases")
STEP_KEYS = {"step", "when", "critical", "rationale"}
ELSEWHERE = {"WV-1", "WV-2", "WV-3"}
"""Rules of waivers, which no protocol alone can fire."""


class LineLoader(yaml.SafeLoader):
    """Mappings know the line on which they begin, keys and values included."""


def _mapping(loader, node):
    loader.flatten_mapping(node)
    value = loader.construct_mapping(node, deep=True)
    value[LINES] = {key.value: key.start_mark.line + 1 for key, _value in node.value}
    value[LINES][LINES] = node.start_mark.line + 1
    return value


LINES = "(lines)"
LineLoader.yaml_implicit_resolvers = {
    letter: [(tag, regexp) for tag, regexp in resolvers if letter not in "oO" or not tag.endswith("bool")]
    for letter, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}
"""``on`` stays a word, as in the content of a library."""

LineLoader.add_constructor(yaml.resolver.BaseResolver.DEFAULT_MAPPING_TAG, _mapping)
SHARED = yaml.safe_load((CASES / "small_ward.yaml").read_text(encoding="utf-8"))


def _fields(entry, **renamed):
    values = {}
    for key, value in entry.items():
        if key != LINES:
            name = renamed.get(key, key.replace("-", "_"))
            values[name] = tuple(value) if isinstance(value, list) else value
    return values


def _garment(entry):
    """A garment whose parts and fasteners may have keys of their own, as in kit.yaml."""
    fields = _fields(entry)
    parts = fields.pop("parts", {})
    fields["parts"] = {
        key: GarmentPart(id=key, **_fields(part)) for key, part in parts.items() if key != LINES
    }
    if isinstance(fields.get("fasteners"), dict):
        named = {key: _fields(each) for key, each in fields["fasteners"].items() if key != LINES}
        fields["fasteners"] = tuple(named)
        fields["fastener_sites"] = {key: each["at"] for key, each in named.items() if "at" in each}
        fields["fasteners_under"] = {key: each["under"] for key, each in named.items() if "under" in each}
    return fields


def _origin(entry):
    """Everybody comes from the hall, with clean kit, unless a case says otherwise, or says ``unsaid``."""
    origin = entry.get("comes-from", "hall")
    return None if origin == "unsaid" else origin


class Case:
    """One document of a case file, as a library with one protocol."""

    def __init__(self, path, document, text):
        self.path, self.document = path, document
        self.code = path.stem
        self.fires = "fires" in document
        self.title = document.get("fires") or document.get("silent")
        first = document[LINES][LINES]
        self.expected = Counter()
        for number, line in text:
            if number >= first and (found := re.search(r"# expect: (.*)$", line)):
                self.expected.update((number, code) for code in found[1].split(", "))

    def place(self, line):
        return Place(self.path.name, line)

    def _place_of(self, section, key):
        own = self.document.get(section, {})
        return self.place(own[LINES][key]) if key in own else Place("shared")

    def _entries(self, section):
        entries = {**SHARED[section], **self.document.get(section, {})}
        return {key: entry for key, entry in entries.items() if key != LINES}

    def library(self):
        garments = {
            key: Garment(
                id=key, name=key, place=self._place_of("kit", key), **{"kind": "other", **_garment(entry)}
            )
            for key, entry in self._entries("kit").items()
        }
        fixtures = {
            key: Fixture(id=key, **_fields(entry)) for key, entry in self._entries("fixtures").items()
        }
        zones = {
            key: Zone(id=key, name=key, **_fields(entry, **{"class": "zone_class"}))
            for key, entry in self._entries("zones").items()
        }
        doors = tuple(
            Door(
                start=door["from"],
                end=door["to"],
                opening=door.get("opening"),
                window=door.get("window", False),
                place=self.place(door.get(LINES, {}).get(LINES, 0)),
            )
            for door in self.document.get("doors", SHARED["doors"])
        )
        policy = {
            key: PolicyValue(
                id=key, value=tuple(v) if isinstance(v, list) else v, source="case", owner="case"
            )
            for key, v in self._entries("policy").items()
            if v != "undecided"
        }
        return Library(
            name="case",
            source_locale="en",
            locales={},
            training_address="",
            papers=(),
            garments=garments,
            policy=policy,
            terms=(),
            wards={"ward": Ward(id="ward", name="ward", zones=zones, doors=doors, fixtures=fixtures)},
            protocols={"case": self.protocol()},
        )

    def protocol(self):
        document = self.document
        steps = tuple(self._step(number, entry) for number, entry in enumerate(document["steps"], 1))
        start = document.get("starts-in", "hall")
        moves = [a.to for s in steps for a in s.actions if a.verb == "move" and a.by == "wearer"]
        lines = document[LINES]
        wearer = Actor(
            id="wearer",
            role="wearer",
            starts_in=start,
            wears=tuple(document.get("wears", ["clothes"])),
            carries=tuple(document.get("carries", [])),
            comes_from=_origin(document),
            place=self.place(lines.get("starts-in", lines.get("wears", 0))),
            places={"wears": self.place(lines.get("wears", 0))},
        )
        others = [
            Actor(
                id=key,
                place=self._place_of("people", key),
                **{**_fields(entry), "comes_from": _origin(entry)},
            )
            for key, entry in document.get("people", {}).items()
            if key != LINES
        ]
        phase = Phase(
            id="phase",
            title="phase",
            theme=document.get("theme", "plain"),
            steps=steps,
            seconds=document.get("layout-seconds"),
        )
        return Protocol(
            id="case",
            code="C1",
            title=self.title,
            revision=1,
            owner="case",
            review_by=date(2030, 1, 1),
            ward="ward",
            people=(wearer, *others),
            ends_in=document.get("ends-in", [start, *moves][-1]),
            phases=(phase,),
            things={
                key: Thing(id=key, **_fields(entry))
                for key, entry in document.get("things", {}).items()
                if key != LINES
            },
            place=self.place(lines["steps"]),
            places={"ends_in": self.place(lines.get("ends-in", 0))},
        )

    def _step(self, number, entry):
        fields = _fields(entry, do="verb")
        about_step = {key: fields.pop(key) for key in list(fields) if key in STEP_KEYS}
        name = about_step.pop("step", f"step-{number}")
        action = Action(**fields)
        place = self.place(entry[LINES][LINES])
        return Step(id=name, text=name, picture="", actions=(action,), place=place, **about_step)

    def found(self, without=frozenset()):
        library = self.library()
        look = study_protocol if self.document.get("study") else rehearse
        findings = look(library, library.protocols["case"], without).findings
        return Counter((finding.place.line, finding.code) for finding in findings)


def _cases():
    for path in sorted(CASES.glob("*-*.yaml")):
        text = path.read_text(encoding="utf-8")
        ends = [i for i, line in enumerate(text.splitlines(), 1) if line == "---"] + [10**6]
        numbered = list(enumerate(text.splitlines(), 1))
        for document, end in zip(yaml.load_all(text, LineLoader), ends, strict=True):
            case = Case(path, document, [pair for pair in numbered if pair[0] < end])
            yield pytest.param(case, id=f"{case.code}: {case.title}")


ALL = list(_cases())


@pytest.mark.parametrize("case", ALL)
def test_findings_are_those_written_beside_the_lines(case):
    assert case.found() == case.expected


@pytest.mark.parametrize("rule", [rule for rule in RULES if rule.code not in ELSEWHERE], ids=lambda r: r.code)
def test_every_rule_has_a_case_that_fires_and_one_that_does_not(rule):
    own = [param.values[0] for param in ALL if param.values[0].code == rule.code]
    firing = [case for case in own if case.fires]
    silent = [case for case in own if not case.fires]
    assert firing
    assert silent
    assert all(rule.code in {code for _line, code in case.expected} for case in firing)
    assert all(rule.code not in {code for _line, code in case.expected} for case in silent)


@pytest.mark.parametrize("rule", [rule for rule in RULES if rule.code not in ELSEWHERE], ids=lambda r: r.code)
def test_a_rule_switched_off_breaks_a_case(rule):
    own = [param.values[0] for param in ALL if param.values[0].code == rule.code and param.values[0].fires]
    for case in own:
        left = case.found(without=frozenset({rule.code}))
        assert left != case.expected
        assert rule.code not in {code for _line, code in left}
