"""Catalogue files in the format of GNU gettext, read and written."""
