"""Level 3: what comes back from readers and from the ward, read with care and judged by declared rules."""
