"""What a revision code is bound to: ISO 9001:2015, 7.5.3.2 c asks that changes of documents be controlled."""

from dataclasses import replace

import demo

from signage.model import revision
from signage.model.garment import GarmentModel
from signage.model.library import Printer

P1 = "layered-protection"


def code(library, tag="en", protocol=P1, project=None):
    project = project or demo.project()
    changed = replace(project, library=library)
    return changed.revision(library.protocols[protocol], tag).split("-")


def with_step(library, **values):
    protocol = library.protocols[P1]
    first, *others = protocol.phases
    step = replace(first.steps[0], **values)
    changed = replace(protocol, phases=(replace(first, steps=(step, *first.steps[1:])), *others))
    return replace(library, protocols={**library.protocols, P1: changed})


def with_ward(library, **values):
    ward = library.wards[library.protocols[P1].ward]
    return replace(library, wards={**library.wards, ward.id: replace(ward, **values)})


def test_what_readers_act_on_changes_the_first_part_in_every_language():
    library = demo.project().library
    garment = library.garments["hood"]
    policy = library.policy["min-rub"]
    ward = library.wards[library.protocols[P1].ward]
    zone = ward.zones["dirty-side"]
    changes = {
        "a detail": with_step(library, detail="Something else."),
        "a caution added": with_step(library, caution="Mind the step."),
        "the kit": replace(library, garments={**library.garments, "hood": replace(garment, over=())}),
        "a policy value": replace(library, policy={**library.policy, policy.id: replace(policy, value=99)}),
        "a zone": with_ward(library, zones={**ward.zones, zone.id: replace(zone, floor="clean")}),
    }
    for what, changed in changes.items():
        for tag in ("en", "ar"):
            assert code(changed, tag)[0] != code(library, tag)[0], (what, tag)


def test_printers_readers_slots_comments_and_owners_of_policy_change_nothing():
    library = demo.project().library
    ward = library.wards[library.protocols[P1].ward]
    printer = Printer(id="new", papers=("A4",), margin=5.0, colour=False, duplex=False)
    policy = library.policy["min-rub"]
    for changed in (
        with_ward(library, printers=(*ward.printers, printer)),
        with_ward(library, readers={**ward.readers, "ar": 99}),
        with_ward(library, slots=()),
        replace(library, policy={**library.policy, policy.id: replace(policy, owner="somebody else")}),
        replace(library, training_address="http://elsewhere.example"),
        replace(library, papers=("A3",)),
    ):
        for tag in ("en", "fr"):
            assert code(changed, tag) == code(library, tag)


def test_a_corrected_translation_changes_the_second_part_of_its_own_sheets_only(tmp_path):
    project = demo.project()
    import shutil

    shutil.copytree(project.locales, tmp_path / "locales")
    catalogue = tmp_path / "locales" / "fr" / "LC_MESSAGES" / "content.po"
    text = catalogue.read_text(encoding="utf-8")
    start = text.index('msgstr "', text.index(f'msgctxt "{P1}/apron-off/detail"')) + len('msgstr "')
    catalogue.write_text(f"{text[:start]}Puis {text[start:]}", encoding="utf-8")
    corrected = replace(project, locales=tmp_path / "locales")
    for tag in ("en", "ar", "fr", "hi"):
        for name, protocol in project.library.protocols.items():
            before = project.revision(protocol, tag).split("-")
            after = corrected.revision(protocol, tag).split("-")
            assert before[0] == after[0]
            assert (before[1] != after[1]) == ((name, tag) == (P1, "fr")), (name, tag)


def test_other_digits_are_other_words():
    library = demo.project().library
    locale = library.locales["ar"]
    latin = replace(library, locales={**library.locales, "ar": replace(locale, numerals="latn")})
    assert code(latin, "ar")[0] == code(library, "ar")[0]
    assert code(latin, "ar")[1] != code(library, "ar")[1]
    assert code(latin, "fr") == code(library, "fr")


def test_another_model_of_the_kit_in_use_makes_sheets_doubtful():
    """Designs of kit are not interchangeable: a loop or a flap more is another order of steps."""
    library = demo.project().library
    looped = GarmentModel(id="looped", name="With loops", features=("thumb-loops",))
    plain = GarmentModel(id="plain", name="Without loops")
    models = {"looped": looped, "plain": plain}
    garment = replace(library.garments["coverall"], models=models, model="looped")
    known = replace(library, garments={**library.garments, "coverall": garment})
    changes = {
        "another model is in use": replace(
            known, garments={**known.garments, "coverall": replace(garment, model="plain")}
        ),
        "the ward has another one": with_ward(known, models={"coverall": "plain"}),
        "the model gains a flap": replace(
            known,
            garments={
                **known.garments,
                "coverall": replace(
                    garment, models={**models, "looped": replace(looped, features=("zip-flap",))}
                ),
            },
        ),
    }
    for what, changed in changes.items():
        assert code(changed)[0] != code(known)[0], what
    ward = library.wards[library.protocols[P1].ward]
    elsewhere = with_ward(known, models={**ward.models, "gloves": "plain"})
    assert code(elsewhere) == code(known)


def test_what_older_content_cannot_say_changes_nothing_until_it_is_said():
    library = demo.project().library
    ward = library.wards[library.protocols[P1].ward]
    door = ward.doors[0]
    plain = revision.plain(library.garments["hood"])
    assert not {"parts", "techniques", "models", "adjusters", "fastener_sites"} & plain.keys()
    assert "posture" not in revision.plain(library.protocols[P1].steps[0])
    changes = {
        "a posture": with_step(library, posture="Feet apart."),
        "a view": with_ward(
            library, zones={**ward.zones, door.start: replace(ward.zones[door.start], sees=(door.end,))}
        ),
        "a window": with_ward(library, doors=(replace(door, window=True), *ward.doors[1:])),
        "an origin": replace(
            library,
            protocols={
                **library.protocols,
                P1: replace(
                    library.protocols[P1],
                    people=tuple(replace(each, comes_from=door.end) for each in library.protocols[P1].people),
                ),
            },
        ),
    }
    for what, changed in changes.items():
        assert code(changed)[0] != code(library)[0], what
