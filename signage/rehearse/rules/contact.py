"""Rules of contact: what meets skin, face and clean things; and of the respirator."""

from signage.ground.rule import S1, S2, S3, Rule

BARE_HAND_CONTAMINATED = Rule(
    "CT-1",
    "bare-hand-contaminated",
    S1,
    "A bare hand meets a contaminated surface: an exposure.",
    "Later hygiene lowers what is on the hand; it does not undo the contact.",
    "opening the zip of the coverall with bare hands",
    "Keep a glove on for this step, or use a technique that meets the inside or the straps only.",
)
BARE_SITE_CONTAMINATED = Rule(
    "CT-2",
    "bare-site-contaminated",
    S1,
    "A contaminated surface brushes a bare part of the body: an exposure.",
    "Skin, eyes, nose and mouth are ways in.",
    "respirator pulled off by its front, over the mouth",
    "Choose a technique that keeps the outside away from the body, or cover the part beneath.",
)
HAND_AT_FACE = Rule(
    "CT-3",
    "hand-at-face",
    S1,
    "A contaminated hand layer comes to the head, or the front of something worn on the face is held.",
    "The front has caught the most, and eyes, nose and mouth are close. What is worn over hair, eyes, mouth, "
    "ears or neck counts as the head when it is adjusted or touched. What is worn on the face and taken off "
    "with contaminated hands counts too, even by its straps.",
    "goggles lifted off by the lens",
    "Clean the outermost layer first, and hold straps only.",
)
CLEAN_KIT_DIRTY_HANDS = Rule(
    "CT-4",
    "clean-kit-contaminated-hands",
    S2,
    "Clean kit is put on with contaminated hands.",
    "The kit is contaminated before it is used.",
    "new gloves on after touching the apron",
    "Clean the outermost hand layer before the kit is handled.",
)
TREATED_GLOVE_ON_SKIN = Rule(
    "CT-5",
    "treated-glove-on-skin",
    S2,
    "A hand layer that was cleaned, or met the edge of exposed kit, touches bare skin, eyes, nose or mouth.",
    "Cleaning lowers what is on a glove; it does not make the glove clean.",
    "a rubbed glove wipes the neck",
    "Delete the touch, or do it with clean bare hands.",
)
CLEAN_FIXTURE_TOUCHED = Rule(
    "CT-6",
    "clean-fixture-touched",
    S2,
    "A hand that is not clean touches a fixture over a clean floor, or works a lid, tap, dispenser or door.",
    "The next hand that uses it takes up what was left there. A hand is not clean before the hygiene that is "
    "due to it, nor is a glove that was cleaned while worn.",
    "bin A has no pedal, or the tap is turned with gloves from the room",
    "Use what opens by pedal, elbow or sensor, and keep gloved hands off clean fixtures.",
)
INNERMOST_GLOVE_HANDLES_OUTSIDE = Rule(
    "CT-7",
    "innermost-glove-handles-outside",
    S3,
    "The glove next to the skin is the layer that takes off, opens or wipes what is contaminated outside.",
    "If this glove has a hole, the skin is next; some local orders intend it.",
    "apron torn off after the outer gloves are off",
    "Do the step before the outer gloves come off; where local policy intends it, name the glove in 'layer'.",
)
MOUTH_IN_ZONE = Rule(
    "CT-8",
    "mouth-in-zone",
    S1,
    "Somebody drinks, or meets a need through the mouth, in a zone that is not clean.",
    "The mouth is a way in, and whatever covers it must be moved for a drink.",
    "a drink in the room, or on the dirty side",
    "Move the step to a clean zone, before the kit goes on or after it is off.",
)
RESPIRATOR_OFF_IN_HAZARDOUS_AIR = Rule(
    "RP-1",
    "respirator-off-in-hazardous-air",
    S1,
    "The respirator comes off where the air is declared hazardous.",
    "The next breath is not protected.",
    "respirator off on the dirty side",
    "Move the step to a zone whose air is ok.",
)
RESPIRATOR_OFF_TOO_EARLY = Rule(
    "RP-2",
    "respirator-off-too-early",
    S1,
    "The respirator comes off while contaminated protective kit is still worn.",
    "What shakes off that kit is breathed in.",
    "respirator off before the coverall",
    "Take off all other contaminated kit first; local policy 'respirator-last' asks for it.",
)
RESPIRATOR_MOVED_AFTER_CHECK = Rule(
    "RP-3",
    "respirator-moved-after-check",
    S2,
    "The respirator is touched or moved after its seal was checked, and not checked again.",
    "A seal that held may hold no more.",
    "adjust the respirator in the room",
    "Delete the step, or check the seal again after it.",
)

CONTACT = (
    BARE_HAND_CONTAMINATED,
    BARE_SITE_CONTAMINATED,
    HAND_AT_FACE,
    CLEAN_KIT_DIRTY_HANDS,
    TREATED_GLOVE_ON_SKIN,
    CLEAN_FIXTURE_TOUCHED,
    INNERMOST_GLOVE_HANDLES_OUTSIDE,
    MOUTH_IN_ZONE,
    RESPIRATOR_OFF_IN_HAZARDOUS_AIR,
    RESPIRATOR_OFF_TOO_EARLY,
    RESPIRATOR_MOVED_AFTER_CHECK,
)
