"""Two editions of the demo held against each other; each row of a table is one change and all it leads to."""

from dataclasses import replace

import demo
from edition_samples import PROTOCOL, edition, with_library, with_steps, with_words
from register_samples import DAY

from signage.control.comparison.comparison import compare
from signage.ground.place import Place
from signage.ground.problem import Problem, Severity
from signage.model.copies import Copy, Event, EventKind, Spot, states_of


def _take_off(change):
    """The demo with other steps in the second phase of its contact room."""
    return with_steps(lambda phase, steps: change(steps) if phase == "take-off" else None)


def _renamed(steps):
    return [replace(step, id="rub-in-corridor") if step.id == "rub-outside" else step for step in steps]


def _moved(steps):
    (last,) = [step for step in steps if step.id == "rub-outside"]
    return [last, *(step for step in steps if step is not last)]


def _worded(steps):
    return [
        replace(step, why="They have touched the most.") if step.id == "gloves-off" else step
        for step in steps
    ]


def _seconds(steps):
    return [
        replace(step, actions=(replace(step.action, seconds=30),)) if step.id == "rub-gloves" else step
        for step in steps
    ]


STEPS = (
    (_renamed, [("rub-in-corridor", "rub-outside", ["renamed"])], set()),
    (_moved, [("rub-outside", "rub-outside", ["moved"])], set()),
    (lambda steps: steps[:-1], [("rub-outside", "rub-outside", ["removed"])], set()),
    (lambda steps: [*steps, replace(steps[0], id="stop", text="Stop")], [("stop", "stop", ["added"])], set()),
    (_worded, [("gloves-off", "gloves-off", ["changed"])], set()),
    (_seconds, [("rub-gloves", "rub-gloves", ["changed"])], {("movement 1 seconds", "20", "30")}),
    (lambda steps: _moved(_seconds(steps)),
     [("rub-outside", "rub-outside", ["moved"]), ("rub-gloves", "rub-gloves", ["changed"])],
     {("movement 1 seconds", "20", "30")}),
)  # fmt: skip


def test_what_became_of_each_step_is_told_and_of_no_other():
    for change, steps, values in STEPS:
        (found,) = compare(edition(), _take_off(change)).protocols
        told = [(each.step, each.was, [str(what) for what in each.changes]) for each in found.steps]
        assert told == steps
        assert {(v.path, v.old, v.new) for each in found.steps for v in each.values} == values


def test_the_same_library_differs_in_nothing_and_the_way_back_is_the_change_turned_round():
    assert compare(edition(), edition()).is_same
    for change, _steps, _values in STEPS:
        there, back = (
            compare(*pair) for pair in ((edition(), _take_off(change)), (_take_off(change), edition()))
        )
        assert there.sheets == back.sheets != ()
        turned = {"added": "removed", "removed": "added"}
        (one,), (other,) = there.protocols, back.protocols
        ways = [[str(what) for each in found.steps for what in each.changes] for found in (one, other)]
        told = [sorted(turned.get(what, what) for what in way if what != "changed") for way in ways]
        assert told[0] == sorted(turned.get(what, what) for what in told[1])


def test_a_text_is_told_word_by_word_and_makes_the_other_languages_doubtful():
    found = compare(edition(), _take_off(_worded))
    (text,) = found.protocols[0].steps[0].texts
    assert (text.locale, text.field) == ("en", "why")
    assert text.exchanges == (("most, so they go first.", "the most."),)
    assert {(each.locale, each.doubtful, each.missing) for each in found.languages} == {
        (tag, (f"{PROTOCOL}/gloves-off/why",), ()) for tag in ("ar", "fr", "am", "hi", "bn")
    }
    assert {each.locale for each in found.languages if each.is_in_use} == {"ar", "fr", "am", "hi"}
    assert {(code, tag) for code, tag in found.sheets} == {
        ("P2", tag) for tag in demo.project().library.locales
    }


def test_a_translation_alone_is_told_in_its_language_only():
    context = f"{PROTOCOL}/gloves-off/text"
    changed = with_words(edition(), "ar", context, "انزع القفاز")
    found = compare(edition(), changed)
    (step,) = found.protocols[0].steps
    assert [(text.locale, text.exchanges) for text in step.texts] == [("ar", (("اخلع", "انزع"),))]
    assert not found.languages


def test_shared_parts_name_the_protocols_that_they_alter():
    library = demo.project().library
    gloves, rub = library.garments["simple-apron"], library.policy["min-rub"]
    printer = replace(library.wards["lantern-bay"].printers[0], margin=9.0)
    ward = replace(library.wards["lantern-bay"], printers=(printer,))
    everything = {protocol.code for protocol in library.protocols.values()}
    uses = {
        each.code
        for name, each in library.protocols.items()
        if "simple-apron" in edition().contents[name]["kit"]
    }
    table = (
        ({"garments": {**library.garments, "simple-apron": replace(gloves, covers=("trunk",))}}, "kit", uses),
        ({"policy": {**library.policy, "min-rub": replace(rub, value=30)}}, "policy", everything),
        ({"wards": {**library.wards, "lantern-bay": ward}}, "ward", set()),
    )
    assert uses
    assert uses < everything
    for fields, kind, touched in table:
        (part,) = compare(edition(), with_library(**fields)).parts
        assert (part.kind, set(part.protocols)) == (kind, touched)
        assert part.values


def test_a_language_that_comes_is_told_and_leaves_the_others_alone():
    library = demo.project().library
    before = with_library(locales={tag: each for tag, each in library.locales.items() if tag != "hi"})
    found = compare(before, edition())
    assert found.added_locales == ("hi",)
    assert (found.languages, found.protocols, found.sheets) == ((), (), ())
    assert compare(edition(), before).removed_locales == ("hi",)


def test_a_finding_on_another_line_is_the_same_and_two_of_a_kind_are_two():
    def problem(line, message="No hand hygiene"):
        return Problem("HH-1", "n", Severity.S1, message, place=Place("p.yaml", line, 1), step="apron-off")

    before = replace(edition(), findings=(problem(3), problem(9)))
    after = replace(edition(), findings=(problem(4), problem(5, "Another")))
    found = compare(before, after)
    assert [each.message for each in found.new_findings] == ["Another"]
    assert [each.place.line for each in found.gone_findings] == [9]
    assert dict(found.counts_before) == {"S1": 2, "S2": 0, "S3": 0}


def test_copies_that_hang_with_the_old_content_are_named_in_walking_order():
    changed = _take_off(_worded)
    old, new = edition().hashes[PROTOCOL, "en"], changed.hashes[PROTOCOL, "en"]
    copies = [
        Copy(f"QW-000{n}-X", "poster", PROTOCOL, tag, "A-B", whole, "none", DAY, "icn")
        for n, (tag, whole) in enumerate([("en", old), ("en", new), ("en", "older"), ("en", old)], start=1)
    ]
    copies.append(Copy("LB-0009-X", "poster", "clean-hands", "en", "A-B", old, "none", DAY, "icn"))
    events = [
        Event(n, each.number, EventKind.MOUNTED, DAY, "porter", "", Spot("quay-ward", slot))
        for n, (each, slot) in enumerate(zip(copies, ("z", "a", "b", "c", "d"), strict=True), start=1)
    ]
    events.append(Event(9, "QW-0004-X", EventKind.REMOVED, DAY, "porter"))
    found = compare(edition(), changed, states_of(copies, events))
    assert [state.copy.number for state in found.copies] == ["QW-0001-X", "QW-0003-X"]
