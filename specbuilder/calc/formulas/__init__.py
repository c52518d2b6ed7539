"""Formulas: numbers in, numbers out. Nothing here knows a van, an option or a brief."""
