import re

import pytest

from signage.ground.errors import WrongUsageError
from signage.model.messages import LENGTH_BUDGET, MessageRole
from signage.pictograms.picture_set import SHIPPED_PICTURES as PICTURES

LAYERED_PROTECTION = [
    "fit-tested",
    "drink-and-toilet",
    "jewellery-off",
    "hand-rub",
    "inspect-kit",
    "inner-glove-on",
    "coverall-on",
    "zip-close",
    "boot-cover-on",
    "respirator-on",
    "seal-check",
    "goggles-on",
    "hood-on",
    "apron-on",
    "outer-glove-on",
    "observer-check",
    "enter-room",
    "to-dirty-side",
    "rub-outer-gloves",
    "apron-off",
    "sit-down",
    "boot-cover-off",
    "stand-up",
    "outer-glove-off",
    "rub-inner-gloves",
    "hood-off",
    "zip-open",
    "coverall-off",
    "goggles-off",
    "inner-glove-off",
    "rub-bare-hands",
    "to-clean-side",
    "respirator-off",
    "hand-wash",
    "stand-on-mat",
    "to-corridor",
    "palmful",
    "sign-outer-glove",
    "sign-inner-glove",
    "sign-bare-hand",
]

TRAVEL = {
    "boot-cover-on",
    "boot-cover-off",
    "enter-room",
    "sit-down",
    "stand-on-mat",
    "stand-up",
    "to-clean-side",
    "to-corridor",
    "to-dirty-side",
}


def test_every_step_of_layered_protection_has_its_picture():
    assert [PICTURES.scene(name).name for name in LAYERED_PROTECTION] == LAYERED_PROTECTION


def test_putting_on_and_taking_off_carry_their_theme():
    themes = {name: PICTURES.scene(name).theme for name in LAYERED_PROTECTION}
    on = {name for name in themes if name.endswith("-on")} - {"stand-on-mat"}
    off = {name for name in themes if name.endswith("-off")} - {"jewellery-off"}
    assert {name: themes[name] for name in on | off} == dict.fromkeys(on, "don") | dict.fromkeys(off, "doff")


def test_only_pictures_of_travel_mirror_with_the_layout():
    mirrored = {name for name in LAYERED_PROTECTION if PICTURES.scene(name).mirror == "with-layout"}
    assert mirrored == TRAVEL


def is_plain(sentence):
    return (
        len(sentence) <= LENGTH_BUDGET[MessageRole.PICTURE]
        and sentence[0].isupper()
        and sentence.endswith(".")
        and not re.search(r"\b(picture|image|icon|pictogram|blue|orange) ", sentence, re.IGNORECASE)
    )


def test_the_sentence_of_a_picture_is_one_plain_sentence():
    sentences = {name: PICTURES.scene(name).alternative for name in PICTURES.names}
    assert {name: sentence for name, sentence in sentences.items() if not is_plain(sentence)} == {}


def test_sentences_are_all_different():
    sentences = [PICTURES.scene(name).alternative for name in PICTURES.names]
    assert len(set(sentences)) == len(sentences)


def test_a_message_a_picture_for_translators():
    message, _ = PICTURES.messages(["apron-on", "apron-off"])
    assert message.context == "picture/apron-on"
    assert message.role is MessageRole.PICTURE
    assert message.picture == "apron-on"
    assert message.source == PICTURES.scene("apron-on").alternative
    assert message.place.path == "scenes/apron-on.yaml"


def test_an_unknown_picture_is_named_with_those_that_exist():
    with pytest.raises(WrongUsageError, match=r"no picture is named 'apron'.*apron-on"):
        PICTURES.scene("apron")


def test_different_pictures_have_different_fingerprints():
    prints = {PICTURES.fingerprint(name) for name in PICTURES.names}
    assert len(prints) == len(PICTURES.names)


def test_a_fingerprint_is_a_sha_256_in_hexadecimal():
    assert re.fullmatch("[0-9a-f]{64}", PICTURES.fingerprint("apron-on"))


def test_outer_glove_inner_glove_and_bare_hand_are_told_apart_by_fill():
    fills = {}
    for name, pigment in (
        ("sign-outer-glove", "paper"),
        ("sign-inner-glove", "tone"),
        ("sign-bare-hand", "ink"),
    ):
        hand = [operation for operation in PICTURES.scene(name).operations if operation.role == "hand"]
        fills[name] = {operation.pigment for operation in hand}
        assert fills[name] == {pigment}
