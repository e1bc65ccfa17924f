"""Sheets to tagged PDF files (ISO 32000-1, PDF/UA-1)."""
