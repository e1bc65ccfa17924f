"""Rules of places: bins, zones and their doors, chairs, mats and other fixtures."""

from signage.ground.rule import S1, S2, S3, Rule

NEVER_DISCARDED = Rule(
    "BN-1",
    "never-discarded",
    S1,
    "Something that was taken off is never put anywhere.",
    "It is laid on the next surface, or carried along.",
    "apron off, and no bin is named",
    "Name the bin in the step: 'bin: bin-a'.",
)
BIN_ELSEWHERE = Rule(
    "BN-2",
    "bin-elsewhere",
    S1,
    "The bin stands in another zone than the person.",
    "Contaminated kit is carried over the line, or dropped.",
    "respirator off on the dirty side, its bin on the clean side",
    "Name a bin of this zone, or move the step to the zone of the bin.",
)
WRONG_BIN = Rule(
    "BN-3",
    "wrong-bin",
    S2,
    "The bin does not accept this item (S1 where it is sharp, or reusable and would be thrown away).",
    "Waste staff are hurt, or kit that was to be used again is lost.",
    "goggles into the waste bin",
    "Name a bin or tub that accepts the item, or correct 'accepts' in the ward's file.",
)
STILL_IN_HAND = Rule(
    "BN-4",
    "still-in-hand",
    S2,
    "Something else is done while an item that was taken off is still in the hand.",
    "It touches whatever the hand goes to.",
    "apron off, then rub the gloves with the apron in hand",
    "Discard the item first.",
)
BIN_OVERFULL = Rule(
    "BN-5",
    "bin-overfull",
    S3,
    "More goes into the bin in one run than it is declared to hold.",
    "A bin that is too full is pressed down by hand.",
    "two coveralls into a bin for one",
    "Provide a larger bin, a second bin, or a step that replaces it.",
)
CLEAN_KIT_IN_DIRTY_ZONE = Rule(
    "ZN-1",
    "clean-kit-in-dirty-zone",
    S1,
    "Clean kit is put on over a dirty floor.",
    "It is contaminated while it is put on.",
    "boot covers on inside the room",
    "Put it on in a clean zone, or write 'fresh: yes' where it comes straight out of its pack.",
)
CARRIED_INTO_CLEAN_ZONE = Rule(
    "ZN-2",
    "carried-into-clean-zone",
    S1,
    "Something contaminated is worn or carried into a clean zone.",
    "Everybody in that zone now meets it without protection.",
    "boot covers worn into the corridor",
    "Take it off and discard it before the line.",
)
NO_WAY = Rule(
    "ZN-3",
    "no-way",
    S2,
    "No door of the ward leads this way.",
    "The reader looks for a way that is not there, or takes one against the flow.",
    "from the dirty side back into the anteroom",
    "Name a zone that a door leads to, or declare the door in the ward's file.",
)
CONTAMINATED_SOLES = Rule(
    "ZN-4",
    "contaminated-soles",
    S1,
    "Soles that were on a dirty floor step onto a clean one.",
    "The floor of the clean zone is dirty from then on.",
    "to the corridor without the mat",
    "Add the mat, or take the footwear off, before the clean floor.",
)
FIXTURE_ELSEWHERE = Rule(
    "ZN-5",
    "fixture-elsewhere",
    S2,
    "The named chair or other fixture stands in another zone.",
    "The reader would have to cross a line to reach it.",
    "sit on the clean chair while on the dirty side",
    "Name a fixture of this zone.",
)
WAY_ROUND_REMOVAL = Rule(
    "ZN-6",
    "way-round-removal",
    S1,
    "The doors let a person walk from a contaminated to a clean zone without passing where kit comes off.",
    "Somebody in a hurry will use that way.",
    "a door from the room back to the anteroom",
    "Delete the door from the ward's file if it is locked in that direction, or close it on the ward.",
)
THING_CARRIED_OUT = Rule(
    "ZN-7",
    "thing-carried-out",
    S1,
    "A thing leaves the contaminated zone without being disinfected, or leaves the zone where it is to stay.",
    "Phones and pens go from hand to hand and to the face. A soft thing cannot be disinfected.",
    "the phone is used in the room and taken along",
    "Disinfect it inside with 'do: disinfect', leave it there, or leave it outside.",
)
FIXTURE_ABSENT = Rule(
    "FX-1",
    "fixture-absent",
    S1,
    "The step needs a dispenser, sink or mat and this zone has none.",
    "The step is left out, or done somewhere else.",
    "rub in the room, where there is only a sink",
    "Provide the fixture in this zone, or move the step.",
)
SEAT_CROSSED = Rule(
    "FX-2",
    "seat-crossed",
    S1,
    "A clean seat meets contaminated kit, or a contaminated seat meets a person without protection.",
    "The seat hands it on to the next one. The contact lasts until the person stands up: what "
    "comes off while seated bares what lies beneath to the seat.",
    "boot covers off on the clean chair",
    "Sit on the chair that is meant for this state, or disinfect it first.",
)
SHARED_WITHOUT_DISINFECTION = Rule(
    "FX-3",
    "shared-without-disinfection",
    S2,
    "A seat or surface is used by the next person without disinfection between.",
    "One person's contamination becomes the other's.",
    "two wearers, one dirty chair, nothing between",
    "Add a step that disinfects it.",
)
CONTACT_TIME_TOO_SHORT = Rule(
    "FX-4",
    "contact-time-too-short",
    S2,
    "A mat or a disinfectant is given less time than it needs, or no time is named.",
    "It does not work before its contact time is over.",
    "10 s on a mat that needs 30 s",
    "Write the contact time of the fixture into the step.",
)
NO_SEAT = Rule(
    "FX-5",
    "no-seat",
    S2,
    "Something is taken off the feet without a seat.",
    "A person on one leg falls, or holds on to whatever is near.",
    "boot covers off while standing",
    "Add a step that sits down before.",
)
STILL_SEATED = Rule(
    "FX-6",
    "still-seated",
    S2,
    "The person is seated when told to walk, or at the end.",
    "A step is missing from the card.",
    "sit, boot covers off, go to the clean side",
    "Add a step that stands up.",
)
MAT_NOT_CHARGED = Rule(
    "FX-7",
    "mat-not-charged",
    S2,
    "The mat is declared as not charged, or its time is over.",
    "A dry mat only spreads the dirt.",
    "a mat with 'charged: no'",
    "Add a step that replaces the mat's solution before, or correct the ward's file.",
)

BINS = (NEVER_DISCARDED, BIN_ELSEWHERE, WRONG_BIN, STILL_IN_HAND, BIN_OVERFULL)
ZONES = (
    CLEAN_KIT_IN_DIRTY_ZONE,
    CARRIED_INTO_CLEAN_ZONE,
    NO_WAY,
    CONTAMINATED_SOLES,
    FIXTURE_ELSEWHERE,
    WAY_ROUND_REMOVAL,
    THING_CARRIED_OUT,
)
FIXTURES = (
    FIXTURE_ABSENT,
    SEAT_CROSSED,
    SHARED_WITHOUT_DISINFECTION,
    CONTACT_TIME_TOO_SHORT,
    NO_SEAT,
    STILL_SEATED,
    MAT_NOT_CHARGED,
)
