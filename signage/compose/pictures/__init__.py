"""Sheets about the pictures themselves: all of them to choose from, and a trial on readers."""
