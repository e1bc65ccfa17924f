"""Level 0: lengths, geometry, places in files, problems, files and fingerprints."""
