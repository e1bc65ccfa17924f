"""What differs between two states of a library, from values alone."""
