"""Quantities: units, expressions, facts with their working, and the one place where numbers are rounded to be shown."""
