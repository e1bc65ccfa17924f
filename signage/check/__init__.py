"""Level 4: rules over content, words and composed sheets."""
