"""Writing to the learner: pieces that move, live numbers, phrases at hand, spelling."""
