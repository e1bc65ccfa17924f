"""Level 2: translated messages, numerals, coverage and exchange files."""
