"""The portfolio view: one sheet with everything that one learner's mark needs."""
