"""Level 7: the commands; the only room that prints or exits."""
