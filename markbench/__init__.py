"""Markbench: mark a class's home practicals, from uneven portfolios to a mark sheet."""

__version__ = "0.1.0"
