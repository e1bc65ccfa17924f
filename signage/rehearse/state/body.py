"""The parts of the body that the model knows, and the groups of them that the rules speak of."""

SITES = (
    "hair", "eyes", "mouth-nose", "ears", "neck", "trunk", "arms", "wrists", "hands", "legs", "feet",
)  # fmt: skip

HEAD = frozenset({"hair", "eyes", "mouth-nose", "ears", "neck"})
"""Where a contaminated hand counts as a hand at the face, even over something that is worn there."""

SEAT_SITES = ("trunk", "legs")
"""What meets a seat."""

HANDS = "hands"
HAND_SITES = frozenset({HANDS, "wrists"})
"""What lies beneath a glove; the rules of hands judge it, not those of other bare parts."""

SKIN = "skin"
"""The hand layer beneath all gloves."""
