"""For all tests: property tests try the same examples every time."""

from hypothesis import settings

settings.register_profile("fixed", derandomize=True)
settings.load_profile("fixed")
