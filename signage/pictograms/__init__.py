"""Level 2: scenes drawn from vector parts."""
