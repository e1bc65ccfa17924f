"""Whether a text says what its step and its source say: acts, numbers, negation, terms."""
