"""No scene can hold a machine: what draws too far or too much is refused when it is read, and soon."""

import time

from signage.ground.problem import with_problems
from signage.pictograms.kit.parts import part_named, part_names
from signage.pictograms.own_scenes import read_own_pictures
from signage.pictograms.shipped import SCENE_FOLDER

HEAD = """\
theme: don
focus: card
gloss: {who: wearer, does: show, what: a card}
alt: A hand holds up a card.
layers:
  - {id: card, part: card, at: [48, 28]}
"""
ZIGZAG = [[index * 37 % 96, index * 61 % 97] for index in range(1000)]
DISCS = [f"{{id: d{i}, shape: [{{circle: [{i % 90}, {i % 77}, 3]}}]}}" for i in range(200)]
FAR = "L 5 5 " * 200


def mirrored(times, inner):
    for turn in range(times):
        inner = f"{{id: g{turn}, mirror_at: {40 + turn}, group: [{inner}]}}"
    return inner


def read(tmp_path, layers):
    file = tmp_path / "our-card.yaml"
    file.write_text(HEAD + "".join(f"  - {layer}\n" for layer in layers), encoding="utf-8")
    return with_problems(read_own_pictures([(file, "our-card.yaml")]))


TOO_FAR_OR_TOO_MUCH = [
    ("{id: b, part: bars, args: {count: 1000000000}}", "7:39", "from 1 to 60"),
    ("{id: b, part: bars, args: {count: 0}}", "7:39", "from 1 to 60"),
    ("{id: b, part: germ, args: {knobs: 3000}}", "7:39", "from 1 to 60"),
    ("{id: b, part: speckle, args: {rows: 60, columns: 60}}", "7:5", "2000 pieces of outline"),
    ("{id: b, part: clock, args: {share: 1.0e+9}}", "7:40", "960 units"),
    ("{id: b, part: bars, args: {pitch: .inf}}", "7:39", "a finite number"),
    ("{id: b, path: {arc: [48, 48, 30, 0, 9000000]}}", "7:41", "at most 720"),
    ("{id: b, path: {arc: [48, 48, 30, -9620260, -120]}}", "7:38", "at least -720"),
    ("{id: b, path: {arc: [48, 48, 30, -300, 300]}}", "7:25", "at most 360"),
    ("{id: b, path: {circle: [48, .nan, 30]}}", "7:33", "a finite number"),
    (f"{{id: b, path: {{path: M 0 0 {FAR}}}}}", "7:26", "201 commands were found; at most 120"),
    ("{id: b, path: {path: M 0 0 L 99999 5}}", "7:26", "960 units"),
    ("{id: b, part: bars, rot: 1.0e+12}", "7:30", "at most 720"),
    ("{id: b, part: bars, at: 'front.chin+(0,4000)'}", "7:29", "at most 960"),
    ("{id: b, part: bars, scale: 1.0e+6}", "7:32", "from 0.01 to 20"),
    ("{id: b, part: bars, scale: 0}", "7:32", "from 0.01 to 20"),
    ("{id: b, path: {line: [[1, 1], [9, 9]]}, width: 4000}", "7:52", "at most 96"),
    ("{id: b, scale: 20, group: [{id: c, scale: 20, part: bars}]}", "7:5", "9600 units"),
    (f"{{id: b, shape: [{{polygon: {ZIGZAG}}}]}}", "7:31", "1000 were found; at most 120"),
    (f"{{id: b, shape: [{{polygon: {ZIGZAG[:120]}}}]}}", "7:5", "1500 places where outlines cross"),
    ("{id: b, part: bars, args: {width: 0}}", "7:5", "a width above 0"),
    ("{id: b, part: small-hand, args: {outline: -900}}", "7:5", "a width above 0"),
    (mirrored(7, ", ".join(DISCS)), "7:228", "200 were found; at most 100"),
    (mirrored(5, ", ".join(DISCS[:60])), "7:5", "300 passes of paint"),
    (mirrored(7, DISCS[0]), "7:197", "at most 5"),
    (f"{{id: b, within: [{', '.join(['{circle: [9, 9, 9]}'] * 61)}], part: bars}}", "7:21", "at most 60"),
]


def test_what_no_picture_needs_is_refused_within_a_second_with_its_place(tmp_path):
    for layer, place, words in TOO_FAR_OR_TOO_MUCH:
        start = time.process_time()
        scenes, problems = read(tmp_path, [layer])
        assert time.process_time() - start < 1, layer
        assert scenes == (), layer
        (problem,) = problems
        assert (problem.code, str(problem.place)) == ("PIC-5", f"our-card.yaml:{place}"), layer
        assert words in problem.message, (layer, problem.message)
        assert "docs/pictures.md" in problem.hint


def test_more_layers_than_a_scene_may_have_are_counted_through_groups(tmp_path):
    group = f"{{id: g, group: [{', '.join(DISCS[:90])}]}}"
    _, problems = read(tmp_path, [group, *DISCS[90:105]])
    assert [(problem.code, str(problem.place)) for problem in problems] == [("PIC-5", "our-card.yaml:16:5")]
    assert "layer 101" in problems[0].message


def test_what_ships_is_far_from_every_bound_and_a_full_scene_is_drawn(tmp_path):
    _, problems = with_problems(
        read_own_pictures((file, file.name) for file in sorted(SCENE_FOLDER.glob("*.yaml")))
    )
    assert problems == ()
    scenes, problems = read(tmp_path, DISCS[:60])
    assert problems == ()
    assert len(scenes) == 1


def test_every_number_of_every_part_is_drawn_or_refused_at_its_ends(tmp_path):
    for name in part_names():
        for argument, field in part_named(name).arguments.model_fields.items():
            if field.annotation not in {int, float}:
                continue
            for value in (-960, -1, 0, 1, 960):
                layer = f"{{id: b, part: {name}, args: {{{argument}: {value}}}}}"
                scenes, problems = read(tmp_path, [layer])
                assert len(scenes) + len(problems) == 1, layer
                assert all(problem.message and problem.hint for problem in problems), layer
