"""Level 1: what a library of protocols is, as frozen values."""
