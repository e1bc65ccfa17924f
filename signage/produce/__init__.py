"""Level 6: the jobs, in the only room that knows the order of the stages."""
