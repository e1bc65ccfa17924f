"""Whether a text is sound as a string: its characters, letters, marks and signs."""
