"""Level 3: finished pages onto sheets of paper."""
