"""Level 1: text of any script to positioned glyphs."""
