"""The schema of each content file."""
