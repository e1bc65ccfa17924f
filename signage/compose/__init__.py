"""Level 3: protocols and words to sheets, one module a sheet kind."""
