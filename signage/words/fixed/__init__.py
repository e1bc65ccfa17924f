"""Texts that the programme itself prints on sheets and pages, in the source language."""
