"""Rules of hand hygiene."""

from signage.ground.rule import S1, S2, S3, Rule

NO_HYGIENE_AFTER_REMOVAL = Rule(
    "HH-1",
    "no-hygiene-after-removal",
    S1,
    "Hands go on to the next thing after a removal without hand hygiene between.",
    "What the hands took up from one item is carried to the next. Closing or opening kit whose outside is "
    "contaminated, and tying, taking or receiving a contaminated bag, make hygiene due as a removal does.",
    "outer gloves off, then hood off, with nothing between",
    "Add a step of hand hygiene, on the outermost layer, directly after the removal.",
)
HYGIENE_TOO_SHORT = Rule(
    "HH-2",
    "hygiene-too-short",
    S2,
    "Hand hygiene names no time, or less than local policy wants.",
    "Too short a rub leaves parts of the hands untouched.",
    "rub for 5 s where policy wants 20 s",
    "Write 'seconds: min-rub' or 'seconds: min-wash', so that the step follows the policy.",
)
WRONG_HAND_LAYER = Rule(
    "HH-3",
    "wrong-hand-layer",
    S1,
    "Hand hygiene is aimed at a layer that is not the outermost one on the hands.",
    "The reader strips a glove to follow the step, or cleans nothing.",
    "'rub bare hands' while two pairs of gloves are worn",
    "Name the layer that is outermost at this step.",
)
AGENT_NOT_ALLOWED = Rule(
    "HH-4",
    "agent-not-allowed",
    S2,
    "Local policy does not allow this agent on this hand layer, or on worn kit.",
    "An agent can weaken a glove or harm skin, and rub does not clean soiled hands.",
    "chlorine on a glove where policy allows rub only",
    "Use an agent that policy.yaml allows, or have its owner change the policy.",
)
CHLORINE_ON_SKIN = Rule(
    "HH-5",
    "chlorine-on-skin",
    S1,
    "Chlorine solution is used on bare skin and local policy does not permit it.",
    "It burns skin, and sore skin is an open door.",
    "agent: chlorine on layer: skin",
    "Use rub or wash on skin; only the policy's owner can permit chlorine.",
)
ENDS_WITHOUT_HYGIENE = Rule(
    "HH-6",
    "ends-without-hygiene",
    S1,
    "The protocol ends and the last removal was not followed by hand hygiene.",
    "The person walks away with hands that have just held contaminated kit.",
    "respirator off, then the end",
    "End with hand hygiene on bare hands.",
)
GLOVE_CLEANED_TOO_OFTEN = Rule(
    "HH-7",
    "glove-cleaned-too-often",
    S3,
    "A glove is cleaned more often than the limit of local policy.",
    "Alcohol weakens glove material a little each time.",
    "the seventh rub of one pair where the limit is six",
    "Change the pair earlier, or ask the policy's owner about the limit.",
)
KIT_BEFORE_HYGIENE = Rule(
    "HH-8",
    "kit-before-hygiene",
    S2,
    "Clean kit is put on before hands were cleaned for the first time.",
    "Whatever is on the hands is then on, or inside, the kit.",
    "inner gloves on as the first step",
    "Begin with hand hygiene.",
)
REMOVAL_BEFORE_HYGIENE = Rule(
    "HH-9",
    "removal-before-hygiene",
    S2,
    "The first removal after leaving the contaminated area comes before any hand hygiene.",
    "Hands fresh from the room handle the ties and edges of kit.",
    "out of the room, apron off at once",
    "Add hand hygiene on the outermost layer as the first step outside the contaminated area.",
)
GLOVES_ON_WET_HANDS = Rule(
    "HH-10",
    "gloves-on-wet-hands",
    S3,
    "Gloves go on before hands had the time to dry after a rub that local policy wants.",
    "Wet skin suffers under gloves, gloves tear on it, and the rub works until it is dry.",
    "rub, and gloves on as the next step, where policy.yaml says 'drying-seconds: 15'",
    "Add a step that waits, with its seconds, between the rub and the gloves.",
)

HANDS = (
    NO_HYGIENE_AFTER_REMOVAL,
    HYGIENE_TOO_SHORT,
    WRONG_HAND_LAYER,
    AGENT_NOT_ALLOWED,
    CHLORINE_ON_SKIN,
    ENDS_WITHOUT_HYGIENE,
    GLOVE_CLEANED_TOO_OFTEN,
    KIT_BEFORE_HYGIENE,
    REMOVAL_BEFORE_HYGIENE,
    GLOVES_ON_WET_HANDS,
)
