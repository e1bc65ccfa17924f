"""Protocol steps written once, printed as checked and translated sheets."""

__version__ = "0.1.0"
