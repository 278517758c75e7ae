"""One criterion across the class: the same question for every learner in turn."""
