"""Level 4: the one decision on what may be printed, and the waivers it counts."""
