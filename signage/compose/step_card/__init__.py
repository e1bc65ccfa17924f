"""A card a step, to be laid or hung where the step is done."""
