"""The contact sheet: every set-up photo and every film of the class on one page."""
