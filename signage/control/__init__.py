"""Level 4: what comes back from the ward, read with care and judged by declared rules."""
