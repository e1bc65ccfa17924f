"""The fixed words of sheets that somebody has signed, by id; their source language is always English."""

from __future__ import annotations

from signage.words.fixed.text import FixedText

SIGN_OFF_TEXTS = (
    FixedText(
        "demonstration",
        "DEMO",
        "Mark in a small frame on every sheet that was signed to show how it works.",
        10,
    ),
    FixedText(
        "demonstration-sentence",
        "Demonstration. Not for clinical use.",
        "Printed along all four edges of a sheet that was signed to show how it works.",
        44,
    ),
    FixedText(
        "signed-by",
        "Signed: {role}, {date}",
        "Control text; one role has signed the steps and the words of the sheet.",
        40,
    ),
    FixedText(
        "steps-signed-by", "Steps signed: {role}, {date}", "Control text; the role that signed them.", 44
    ),
    FixedText(
        "words-signed-by", "Words signed: {role}, {date}", "Control text; the role that signed them.", 44
    ),
    FixedText(
        "role-declared",
        "Role as declared.",
        "Control text behind a signature: nobody has proved which person it was.",
        34,
    ),
)
