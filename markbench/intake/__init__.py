"""Find what was handed in, match it to the class list, read messy tables."""
