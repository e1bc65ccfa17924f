"""The words of which content files choose one: whoever reads a file turns the text into the value."""

from __future__ import annotations

from enum import StrEnum


class ActionVerb(StrEnum):
    """What a movement does: the value of ``do`` in the step grammar."""

    NEED = "need"
    INSPECT = "inspect"
    CHECK = "check"
    DON = "don"
    FASTEN = "fasten"
    UNFASTEN = "unfasten"
    DOFF = "doff"
    DISCARD = "discard"
    HYGIENE = "hygiene"
    TOUCH = "touch"
    ADJUST = "adjust"
    MOVE = "move"
    SIT = "sit"
    STAND = "stand"
    DISINFECT = "disinfect"
    MAT = "mat"
    WAIT = "wait"
    SAY = "say"
    HANDOVER = "handover"
    REPLACE = "replace"
    BRANCH = "branch"
    WIPE = "wipe"
    RAISE = "raise"
    LOWER = "lower"
    DRINK = "drink"
    CHANGE_CLOTHES = "change-clothes"
    TAKE = "take"
    PUT_DOWN = "put-down"


class PhaseTheme(StrEnum):
    """What the steps of a phase are about, which gives its sheets their form and colour."""

    DON = "don"
    DOFF = "doff"
    HANDS = "hands"
    PLAIN = "plain"


class ZoneClass(StrEnum):
    """How clean a zone is held."""

    CLEAN = "clean"
    TRANSITION = "transition"
    CONTAMINATED = "contaminated"


class PersonRole(StrEnum):
    """What somebody does in a protocol."""

    WEARER = "wearer"
    ASSISTANT = "assistant"
    OBSERVER = "observer"


class RuleKind(StrEnum):
    """What the rule of a phase is: it stops the work, or asks for care."""

    STOP = "stop"
    CAUTION = "caution"


class StepCondition(StrEnum):
    """When a step is done."""

    ALWAYS = "always"
    IF_SOILED = "if-soiled"
    IF_TORN = "if-torn"
