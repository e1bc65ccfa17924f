"""Level 3: what comes back from readers, read with care and judged by declared rules."""
