"""The report of a rehearsal as a page: all that is found and every step, for eyes and for screen readers."""

import re
from dataclasses import replace
from datetime import date
from functools import lru_cache
from html.parser import HTMLParser

import pytest
from rehearsal_edits import (
    demo_library,
    layered_protection,
    new_step,
    with_action,
    with_step_after,
    without_steps,
)

from signage.model.waiver import Waiver
from signage.pages.rehearsal.page import grid_of, rehearsal_page
from signage.pages.rehearsal.views import numbers_by_phase
from signage.rehearse.rehearsal import NOT_SAFE, SIMPLIFICATIONS
from signage.rehearse.report import report_on
from signage.rehearse.variations.study import study_protocol

DAY = date(2026, 11, 26)


class Elements(HTMLParser):
    """Elements with their text, and a record of tags that were not closed in order."""

    def __init__(self, text):
        super().__init__()
        self.found = []
        self.open = []
        self.crossed = []
        self.feed(text)
        self.close()

    def handle_startendtag(self, tag, attributes):
        self.found.append([tag, dict(attributes), "", len(self.open)])

    def handle_starttag(self, tag, attributes):
        self.handle_startendtag(tag, attributes)
        if tag != "meta":
            self.open.append((tag, self.found[-1]))

    def handle_endtag(self, tag):
        if not self.open or self.open[-1][0] != tag:
            self.crossed.append(tag)
        else:
            self.open.pop()

    def handle_data(self, data):
        for _tag, element in self.open:
            element[2] += data

    def all(self, tag, kind=None):
        return [
            (attributes, " ".join(text.split()))
            for each, attributes, text, _depth in self.found
            if each == tag and (kind is None or kind in (attributes.get("class") or "").split())
        ]


def page(protocol, library=None, waivers=(), edition=""):
    library = replace(library or demo_library(), waivers=tuple(waivers))
    report = report_on(library, protocol, study_protocol(library, protocol), DAY)
    return rehearsal_page(library, report, edition)


@lru_cache(maxsize=16)
def demo_page(name="layered-protection"):
    return page(demo_library().protocols[name])


@lru_cache(maxsize=1)
def page_without_a_rub():
    return page(without_steps(layered_protection(), "rub-after-outer"))


def steps_of(html):
    return Elements(html).all("li", "step")


def figures_of(html):
    return [attributes["aria-label"] for attributes, _text in Elements(html).all("svg", "main")]


def test_the_same_report_gives_the_same_page():
    again = page(layered_protection())
    assert again == demo_page()
    assert str(DAY.year) not in Elements(again).all("header")[0][1]


@pytest.mark.parametrize("name", demo_library().protocols)
def test_every_step_is_shown_in_order_with_its_number_and_words(name):
    protocol = demo_library().protocols[name]
    shown = [text for _attributes, text in Elements(demo_page(name)).all("h3")]
    expected = []
    for phase in protocol.phases:
        for number, step in enumerate(phase.steps, start=1):
            time = f"{step.action.seconds} s"
            expected.append(f"{number} {step.text.replace('{time}', time)}")
    assert len(steps_of(demo_page(name))) == len(protocol.steps)
    plain = [re.sub("[\u2066-\u2069]", "", text) for text in shown]
    assert plain == expected


@pytest.mark.parametrize("name", demo_library().protocols)
def test_every_person_has_a_figure_at_every_step_with_its_state_in_words(name):
    protocol = demo_library().protocols[name]
    figures = Elements(demo_page(name)).all("svg", "figure")
    assert len(figures) == len(protocol.steps) * len(protocol.people)
    for attributes, _text in figures:
        assert attributes["role"] == "img"
        assert "Hands from the skin outwards: skin " in attributes["aria-label"]
        assert "Soles " in attributes["aria-label"]


def test_the_words_of_a_figure_tell_hands_kit_bare_parts_and_what_is_due():
    names = [step.id for step in layered_protection().steps]
    told = dict(zip(names, figures_of(demo_page()), strict=True))
    assert told["hood-off"].startswith(
        "wearer, Dirty side. Hands from the skin outwards: skin clean, inner gloves"
    )
    assert "inner gloves reduced" in told["hood-off"]
    assert "Bare: hair, ears" in told["hood-off"]
    assert "Hand hygiene is due, after hood" in told["hood-off"]
    assert "is due" not in told["rub-after-hood"]
    assert "zip open" in told["coverall-on"]
    assert "coverall outside contaminated" in told["enter-room"]
    assert "Sits on dirty chair" in told["sit-dirty-chair"]


def test_hygiene_that_is_due_is_marked_where_it_is_due_and_nowhere_else():
    marked = {attributes["id"] for attributes, text in steps_of(demo_page()) if "hygiene due" in text}
    names = [step.id for step in layered_protection().steps]
    assert {names[int(mark.removeprefix("step-")) - 1] for mark in marked} == {
        "apron-off",
        "boot-covers-off",
        "outer-gloves-off",
        "hood-off",
        "zip-open",
        "coverall-off",
        "goggles-off",
        "inner-gloves-off",
        "respirator-off",
    }


def test_a_seeded_fault_is_framed_and_named_at_its_step_alone():
    found = [
        (a["class"], text) for a, text in steps_of(page_without_a_rub()) if "found" in a["class"].split()
    ]
    assert len(found) == 1
    assert "s1" in found[0][0].split()
    assert "Take off the hood S1 HH-1" in found[0][1]


def test_a_finding_has_its_place_its_words_and_what_to_do():
    listed = Elements(page_without_a_rub()).all("section", "findings")[0][1]
    step = next(step for step in layered_protection().steps if step.id == "hood-off")
    assert f"layered-protection.yaml:{step.place.line}:{step.place.column} · Take off 10" in listed
    assert "S1 HH-1 No hand hygiene between" in listed
    assert "Add a step of hand hygiene" in listed
    assert [text for _a, text in Elements(page_without_a_rub()).all("div", "some")] == [
        "S1 blocks every sheet but drafts1"
    ]


def test_what_follows_from_a_cause_stands_under_it():
    html = page(without_steps(layered_protection(), "boot-covers-off"))
    (then,) = Elements(html).all("ol", "then")
    assert all(code in then[1] for code in ("LY-1", "RP-2", "ZN-2"))
    assert "LY-7" not in then[1]


def test_a_waived_finding_stands_apart_with_who_why_and_until_when_and_does_not_count():
    protocol = with_action(layered_protection(), "rub-after-hood", seconds=5)
    step = next(step for step in protocol.steps if step.id == "rub-after-hood")
    waiver = Waiver(
        code="HH-2",
        protocol=protocol.id,
        step=step.id,
        reason="A trial <until spring>",
        role="infection control lead",
        expires=date(2026, 12, 31),
    )
    html = page(protocol, waivers=[waiver])
    elements = Elements(html)
    (waived,) = elements.all("ol", "waived")
    assert "Waived by infection control lead until 2026-12-31: A trial <until spring>" in waived[1]
    assert elements.all("div", "some") == []
    assert "HH-2 waived" in next(text for a, text in steps_of(html) if "HH-2" in text)
    assert not any("found" in a["class"].split() for a, _text in steps_of(html))


def test_an_expired_waiver_is_told_and_counts():
    protocol = with_action(layered_protection(), "rub-after-hood", seconds=5)
    waiver = Waiver(
        code="HH-2",
        protocol=protocol.id,
        step="rub-after-hood",
        reason="A trial",
        role="lead",
        expires=date(2026, 1, 31),
    )
    elements = Elements(page(protocol, waivers=[waiver]))
    assert "held until 2026-01-31" in elements.all("ol", "problems")[0][1]
    assert elements.all("div", "some")


@pytest.mark.parametrize("name", demo_library().protocols)
def test_what_the_model_leaves_out_is_always_said(name):
    page = demo_page(name)
    said = Elements(page).all("section", "limits")[0][1]
    assert all(sentence in said for sentence in SIMPLIFICATIONS if sentence != NOT_SAFE)
    assert NOT_SAFE in Elements(page).all("section", "findings")[0][1]
    assert page.count("mean safe") == 1


def test_every_level_has_its_own_pattern_and_the_key_shows_each():
    key = demo_page().split('<section class="key"')[1].split("</section>")[0]
    clean, reduced, contaminated = (
        next(part for part in key.split("<li>") if part.split("</svg>")[-1].strip().startswith(word))
        for word in ("clean", "reduced", "contaminated")
    )
    assert "#reduced" in reduced
    assert "#contaminated" in contaminated
    assert "#reduced" not in clean + contaminated
    drawn = re.findall(r'<path id="(reduced|contaminated)" class="hatch" d="([^"]+)"', demo_page())
    assert len({data for _name, data in drawn}) == 2


def test_equipment_and_what_steps_carry_are_listed():
    elements = Elements(demo_page())
    needs = elements.all("section", "needs")[0][1]
    assert "bin A (4, filled 1×)" in needs
    assert "outer gloves 1×" in needs
    assert "goggles 1× (comes back)" in needs
    assert "rub 10×, wash 1×" in needs
    load = elements.all("section", "load")[0][1]
    assert "42 of 42: Put on 1\u201317 · Take off 1\u201325" in load
    assert "11: Put on 1\u21942" in load


def test_an_edition_is_shown_only_where_it_is_given():
    assert "Revision 7" in page(layered_protection(), edition="Revision 7")
    assert "Revision" not in demo_page()


def test_hostile_words_stay_words():
    hostile = '<script>alert(1)</script>"><img src=x onerror=y>{{ 7*7 }}'
    step = replace(new_step("hello", "say"), text=hostile)
    library, ward = demo_library(), demo_library().wards["lantern-bay"]
    zones = {**ward.zones, "dirty-side": replace(ward.zones["dirty-side"], name=hostile)}
    garments = {**library.garments, "hood": replace(library.garments["hood"], name=hostile)}
    wards = {ward.id: replace(ward, zones=zones)}
    library = replace(library, garments=garments, wards=wards)
    protocol = replace(with_step_after(layered_protection(), "jewellery-off", step), title=hostile)
    html = page(protocol, library)
    assert {tag for tag, *_rest in Elements(html).found} == {
        tag for tag, *_rest in Elements(demo_page()).found
    } | {
        "ol",
        "a",
    }
    assert "<script" not in html
    assert "<img" not in html
    assert hostile in Elements(html).all("h1")[0][1]


@pytest.mark.parametrize("html", [demo_page, page_without_a_rub], ids=["clean", "with a finding"])
def test_the_page_asks_for_nothing_and_runs_nothing(html):
    text = html()
    elements = Elements(text)
    assert {"script", "link", "img", "iframe", "object", "form", "base"}.isdisjoint(
        e[0] for e in elements.found
    )
    for _tag, attributes, _text, _depth in elements.found:
        assert not {"src", "srcset", "action", "style"} & set(attributes)
        assert not any(name.startswith("on") for name in attributes)
        assert attributes.get("href", "#").startswith("#")
    assert set(re.findall(r"url\((.)", text)) <= {"#"}
    assert "@import" not in text
    assert "http" not in text
    assert text.count("<style>") == 1


@pytest.mark.parametrize("html", [demo_page, page_without_a_rub], ids=["clean", "with a finding"])
def test_the_page_is_well_formed_and_every_reference_inside_it_leads_somewhere(html):
    elements = Elements(html())
    assert elements.crossed == []
    assert elements.open == []
    names = [attributes["id"] for _tag, attributes, *_rest in elements.found if "id" in attributes]
    assert len(names) == len(set(names))
    wanted = set(re.findall(r'href="#([^"]+)"', html())) | set(re.findall(r"url\(#([^)]+)\)", html()))
    wanted |= {a["aria-labelledby"] for _t, a, *_rest in elements.found if "aria-labelledby" in a}
    assert wanted <= set(names)


def test_with_faulty_references_every_step_is_still_there():
    html = page(with_action(layered_protection(), "hood-off", bin="dirty-chair"))
    assert len(steps_of(html)) == 42
    assert "ST-2" in Elements(html).all("section", "findings")[0][1]
    unknown_ward = page(replace(layered_protection(), ward="nowhere"))
    assert [text for _a, text in steps_of(unknown_ward) if "Not rehearsed" not in text] == []


def test_a_conditional_step_says_when():
    step = replace(new_step("torn", "say"), when="if-torn", rationale="x")
    html = page(with_step_after(layered_protection(), "jewellery-off", step))
    assert [text for _a, text in Elements(html).all("p", "condition")] == ["only if torn"]


def test_numbers_are_told_by_phase_with_runs_as_ranges():
    protocol = layered_protection()
    names = [step.id for step in protocol.phases[0].steps]
    chosen = [names[0], names[1], names[2], names[4], names[6], names[7], protocol.phases[1].steps[0].id]
    assert numbers_by_phase(protocol, chosen) == (("Put on", "1\u20133, 5, 7, 8"), ("Take off", "1"))


@pytest.mark.parametrize("findings", [0, 2, 3, 14])
def test_up_to_sixty_steps_share_one_sheet_of_a3(findings):
    """A3 on its side is 420 mm by 297 mm (ISO 216); margins of 8 mm leave 404 mm by 281 mm."""
    for steps in range(1, 61):
        grid = grid_of(steps, findings)
        assert grid.side > 0
        assert grid.height <= 281
        assert grid.letters >= 5.5
        rows = -(-steps // grid.columns)
        assert grid.height / rows >= 44
        assert (404 - grid.side) / grid.columns >= 21


def test_more_steps_or_findings_flow_over_several_sheets():
    assert grid_of(61, 0).side == 0
    assert grid_of(10, 40).side == 0
