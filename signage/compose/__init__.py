"""Level 3: protocols and words to sheets, one folder a sheet kind."""
