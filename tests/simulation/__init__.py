"""Worlds for the tests: learners' readings, photographs and films made from physics.

Written apart from the code that judges them, so that agreement means something.
"""
