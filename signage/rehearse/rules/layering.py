"""Rules of layers: what lies over what when kit is put on and taken off."""

from signage.ground.rule import S1, S2, Rule

LAYERS_IN_A_CIRCLE = Rule(
    "LY-0",
    "layers-in-a-circle",
    S1,
    "The kit says that garments lie over one another in a circle.",
    "No order of putting on can make this true, so nothing that follows can be trusted.",
    "hood over goggles, and goggles over hood",
    "Delete the wrong entry of 'over' in kit.yaml.",
)
LAYERS_UNDECLARED = Rule(
    "LY-A",
    "layers-undeclared",
    S2,
    "Two garments are worn on the same part of the body and nothing says which lies outside.",
    "Which of them must come off first cannot be judged.",
    "gown and coverall both cover the trunk, and neither is 'over' the other",
    "Add one to the 'over' of the other in kit.yaml, or write 'parallel: yes' where they do not overlap.",
)
STILL_COVERED = Rule(
    "LY-1",
    "removed-while-covered",
    S1,
    "Something is taken off while something else still lies over it.",
    "Pulling it out drags its outside over clean layers and over the skin.",
    "goggles off before the hood that lies over them",
    "Take off what lies outside first, or take both off in one movement with 'together'.",
)
PUT_ON_TOO_LATE = Rule(
    "LY-2",
    "put-on-too-late",
    S1,
    "Something is put on after what is meant to lie over it, or is listed so in 'wears'.",
    "It ends up outside, or the outer layer must be lifted and is no longer closed.",
    "respirator on after the hood",
    "Move the step to before its outer layer is put on.",
)
LAYER_BENEATH_MISSING = Rule(
    "LY-3",
    "layer-beneath-missing",
    S1,
    "Something is put on and what it needs beneath it is not worn.",
    "The layer that is meant to protect when this one comes off is absent.",
    "outer gloves on bare hands",
    "Put the layer beneath on first, or correct 'needs-under' in kit.yaml.",
)
FASTENER_CLOSED = Rule(
    "LY-4",
    "fastener-closed",
    S1,
    "Something is taken off while one of its fasteners is closed.",
    "Tearing at closed kit flings off what sits on it.",
    "coverall off with the zip closed",
    "Add a step that opens the fastener before.",
)
PUT_ON_TWICE = Rule(
    "LY-5",
    "put-on-twice",
    S2,
    "Something is put on that is already worn.",
    "The step is a slip, or a second piece is meant and is not in the kit.",
    "apron on, and some steps later apron on",
    "Delete the step, or declare the second piece in kit.yaml.",
)
NOT_WORN = Rule(
    "LY-6",
    "not-worn",
    S2,
    "A step acts on something that the person does not wear at that moment.",
    "The reader would stop and wonder what to do.",
    "unzip the coverall after it is off",
    "Delete the step, or move it to where the thing is worn.",
)
NEVER_REMOVED = Rule(
    "LY-7",
    "never-removed",
    S1,
    "Protective kit is still worn when the protocol ends.",
    "What was in the room leaves with the person.",
    "boot covers are put on and never taken off",
    "Add a step that takes it off.",
)
WORN_AGAIN = Rule(
    "LY-9",
    "worn-again",
    S1,
    "Something is put on again after it lay in a bin or tub.",
    "It carries what was on it and what lay beside it.",
    "respirator off into bin R, and some steps later on again",
    "Put on a new one and write 'fresh: yes', or take it off only where it is no longer needed.",
)
TECHNIQUE_MISFIT = Rule(
    "LY-10",
    "technique-misfit",
    S2,
    "Something is taken off in a way that does not work on it, or in no way that is named.",
    "Whoever tries pulls at it, and touches what was to be left alone.",
    "coverall off by its straps: it has none",
    "Name one of the 'techniques' that kit.yaml gives for the item, or correct the list.",
)
FASTENER_OUT_OF_REACH = Rule(
    "LY-8",
    "fastener-out-of-reach",
    S2,
    "A fastener is closed or opened, or a part raised or lowered, while a worn garment or a closed fastener "
    "lies over it. A fastener lies where 'at' says, or, without 'at', anywhere on its garment.",
    "It cannot be reached without lifting the outer layer, and then neither is closed.",
    "zip of the coverall opened under the apron",
    "Close it before the outer layer goes on, open it after that is off, or name its sites with 'at' in "
    "kit.yaml.",
)

LAYERING = (
    LAYERS_IN_A_CIRCLE,
    LAYERS_UNDECLARED,
    STILL_COVERED,
    PUT_ON_TOO_LATE,
    LAYER_BENEATH_MISSING,
    FASTENER_CLOSED,
    PUT_ON_TWICE,
    NOT_WORN,
    NEVER_REMOVED,
    FASTENER_OUT_OF_REACH,
    WORN_AGAIN,
    TECHNIQUE_MISFIT,
)
