"""Level 1: the display list that layout hands to the painters."""
