"""Level 6: the commands; the only room that prints or exits."""
