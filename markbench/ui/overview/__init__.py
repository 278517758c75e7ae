"""Findings of the class in figures that can be saved."""
