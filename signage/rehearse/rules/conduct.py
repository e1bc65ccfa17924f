"""Rules of people: who touches whom, what must be true before entry; and of the protocol's own form."""

from signage.ground.rule import S1, S2, S3, Rule

OBSERVER_TOUCHES = Rule(
    "RO-1",
    "observer-touches",
    S1,
    "The observer handles a person or that person's kit.",
    "Whoever helps with the hands no longer watches, and is not dressed for it.",
    "the observer tucks in the hood",
    "Let the wearer or an assistant do it; the observer only speaks.",
)
NOBODY_TO_HELP = Rule(
    "RO-2",
    "nobody-to-help",
    S2,
    "A step needs another person's hands, and that person is in another zone.",
    "The wearer waits, or tries alone.",
    "the assistant takes off the hood from the next zone",
    "Move that person into the zone first, or write the step so that the wearer does it alone.",
)
NO_OBSERVER = Rule(
    "RO-3",
    "no-observer",
    S1,
    "Kit is taken off and no observer is there to watch, although local policy asks for one.",
    "Slips that nobody sees are not stopped.",
    "a protocol whose only person is the wearer",
    "Add an observer to 'people', outside the contaminated zone.",
)
OUT_OF_SIGHT = Rule(
    "RO-4",
    "out-of-sight",
    S2,
    "Kit comes off a wearer where no observer sees it. A zone sees itself and the zones that it names in "
    "'sees'; without 'sees', those behind its doors with 'window: yes', in both directions. Told once in "
    "each stay of the wearer in a zone; own clothes do not count.",
    "Slips that nobody sees are not stopped.",
    "the observer waits in the waste room",
    "Move the observer to where the wearer is seen, or declare 'sees' or the window in the ward's file.",
)
ORIGIN_UNSAID = Rule(
    "OR-1",
    "origin-unsaid",
    S2,
    "A person starts in a zone that is not clean, or with protective kit on, and the protocol does not say "
    "where that person comes from.",
    "Kit that is taken for clean makes every order of taking off look safe. With 'comes-from', outsides, "
    "soles and the outermost hand layer start contaminated from a contaminated zone or a dirty floor, "
    "treated from another transition zone, and clean from a clean zone.",
    "a card for taking off that begins on the dirty side",
    "Write 'comes-from: room', or whichever zone it is, beside 'starts-in'.",
)
KIT_NOT_INSPECTED = Rule(
    "EN-1",
    "kit-not-inspected",
    S1,
    "Something that must be inspected is put on uninspected.",
    "A hole is found when it is too late.",
    "coverall on without a step that inspects it",
    "Add a step that inspects the item, or the whole kit, before.",
)
CHECK_MISSING = Rule(
    "EN-2",
    "check-missing",
    S1,
    "The contaminated zone is entered without a check that the kit requires.",
    "A gap is breathed through from the first minute.",
    "no seal check of the respirator",
    "Add the check directly after the item is put on.",
)
FASTENER_OPEN = Rule(
    "EN-3",
    "fastener-open",
    S1,
    "The contaminated zone is entered with an open fastener.",
    "The garment protects only where it is closed.",
    "coverall on, zip never closed",
    "Add a step that closes it.",
)
NOT_COVERED = Rule(
    "EN-4",
    "not-covered",
    S1,
    "The contaminated zone is entered without kit that it requires, or with bare skin that it forbids.",
    "The uncovered part is exposed as long as the person is inside.",
    "goggles forgotten",
    "Put the item on before, or correct 'requires' and 'no-skin' in the ward's file.",
)
NEED_NOT_MET = Rule(
    "EN-5",
    "need-not-met",
    S2,
    "A zone that asks for a personal need is entered before it is met.",
    "A person who must leave in a hurry makes mistakes.",
    "no drink and no toilet before",
    "Add a step with 'do: need' before the kit goes on.",
)
NO_OBSERVER_CHECK = Rule(
    "EN-6",
    "no-observer-check",
    S2,
    "The zone asks for an observer's check of the whole ensemble after the last item, and there is none.",
    "Only somebody else sees the back of the neck.",
    "observer check, then apron on, then in",
    "Add 'do: inspect', by the observer and on the wearer, after the last item.",
)
CHECK_BEFORE_ITEM = Rule(
    "EN-7",
    "check-before-item",
    S1,
    "A check is done while the item is not worn.",
    "It checks nothing and is ticked off all the same.",
    "seal check before the respirator is on",
    "Move the check to directly after the item is put on.",
)
CHECK_AFTER_COVERED = Rule(
    "EN-8",
    "check-after-covered",
    S3,
    "A check is done after the item is covered by something else.",
    "A fault that is found now means undressing.",
    "seal check after the goggles are on",
    "Do the check before the next layer.",
)
PROTECTION_LOST = Rule(
    "EN-9",
    "protection-lost",
    S1,
    "Somebody is in a zone without what it asks for: kit of its 'requires' is off or open, skin of its "
    "'no-skin' is bare, or no respirator is worn in hazardous air. Looked at before the first step and after "
    "every movement, for everybody and in zones of every class. Hazardous air asks for the respirator only. "
    "Told once for each person, stay and item, unless EN-3, EN-4 or RP-1 has told it; what a missing item "
    "bares is told with that item.",
    "From this moment on the person is exposed; in a contaminated zone bare parts count as exposed.",
    "hood off inside the room",
    "Do the step in a zone that does not ask for the item, put the item on before, or correct the ward's "
    "file.",
)
NEED_AFTER_KIT = Rule(
    "EN-10",
    "need-after-kit",
    S2,
    "A personal need is met while protective kit is worn, although local policy ('needs-before-kit', yes "
    "unless decided otherwise) wants it before.",
    "Kit is opened or pushed aside for it, or the need is ticked off unmet.",
    "jewellery off after the gloves are on",
    "Move the need to before the first item of kit.",
)
CHECK_UNDONE = Rule(
    "EN-11",
    "check-undone",
    S2,
    "Something that the observer's check or its own check covered is closed, opened, adjusted, put on or "
    "taken off after the check and before entry. Told at the step that changes it, unless the check is done "
    "again; kit that was not yet worn at the check is a matter of EN-6.",
    "The check was of another state than the one in which the zone is entered.",
    "zip closed after the observer's check",
    "Move the step to before the check, or do the check again.",
)
SAME_STEP_TWICE = Rule(
    "ST-1",
    "same-step-twice",
    S1,
    "Two steps carry the same identifier.",
    "Translations, pictures and findings would go to the wrong one.",
    "two steps called apron-off",
    "Rename one; an identifier that was used is never used again.",
)
UNKNOWN_REFERENCE = Rule(
    "ST-2",
    "unknown-reference",
    S1,
    "A step names something that is not declared, that is of another kind, or lacks what its verb needs.",
    "The step cannot be rehearsed; whatever follows from leaving it out is withheld until it is mended.",
    "'bin: dirty-chair'",
    "Name something that is declared, of the kind that the verb needs.",
)
ENDS_ELSEWHERE = Rule(
    "ST-3",
    "ends-elsewhere",
    S2,
    "The protocol ends in another zone than it says.",
    "A step is missing, or the end is.",
    "'ends-in: corridor' and the last step is on the clean side",
    "Add the last move, or correct 'ends-in'.",
)
STEP_WITHOUT_EFFECT = Rule(
    "ST-4",
    "step-without-effect",
    S2,
    "Leaving the step out changes nothing that the rehearsal can see, and no reason for it is given.",
    "The step is either decoration or something that no rule looks at.",
    "a second rub directly after the first",
    "Write 'rationale:' with the reason, or delete the step.",
)
POLICY_VALUE_MISSING = Rule(
    "ST-5",
    "policy-value-missing",
    S2,
    "The rehearsal needs a local decision that policy.yaml does not hold; the strictest reading is used.",
    "The tool must not decide for the hospital.",
    "no 'min-rub' although a step rubs hands",
    "Have the owner of the policy decide, and add value, source and owner.",
)
WAIVER_EXPIRED = Rule(
    "WV-1",
    "waiver-expired",
    S2,
    "A waiver's last day is over; its finding counts again.",
    "A leave that never ends is a change of policy without a decision.",
    "expires: 2026-01-31, looked at on 2026-02-01",
    "Mend the finding, or have the role that signed decide again.",
)
WAIVER_NOT_POSSIBLE = Rule(
    "WV-2",
    "waiver-not-possible",
    S2,
    "A waiver names a finding of severity S1, which cannot be waived.",
    "Findings of this severity can hurt somebody.",
    "a waiver of LY-1",
    "Mend the finding.",
)
WAIVER_WITHOUT_FINDING = Rule(
    "WV-3",
    "waiver-without-finding",
    S3,
    "A waiver fits no finding.",
    "It would silently excuse the finding if it ever came back.",
    "a waiver of CT-7 in a step that was mended",
    "Delete the waiver.",
)

ROLES = (OBSERVER_TOUCHES, NOBODY_TO_HELP, NO_OBSERVER, OUT_OF_SIGHT, ORIGIN_UNSAID)
ENTRY = (
    KIT_NOT_INSPECTED,
    CHECK_MISSING,
    FASTENER_OPEN,
    NOT_COVERED,
    NEED_NOT_MET,
    NO_OBSERVER_CHECK,
    CHECK_BEFORE_ITEM,
    CHECK_AFTER_COVERED,
    PROTECTION_LOST,
    NEED_AFTER_KIT,
    CHECK_UNDONE,
)
STEPS = (
    SAME_STEP_TWICE,
    UNKNOWN_REFERENCE,
    ENDS_ELSEWHERE,
    STEP_WITHOUT_EFFECT,
    POLICY_VALUE_MISSING,
)
WAIVERS = (WAIVER_EXPIRED, WAIVER_NOT_POSSIBLE, WAIVER_WITHOUT_FINDING)
