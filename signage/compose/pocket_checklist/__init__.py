"""A checklist of a protocol that folds to the size of a pocket."""
