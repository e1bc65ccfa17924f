"""Level 2: content files to the model, every value with its place."""
