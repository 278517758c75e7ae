"""The class view: every learner's own graph side by side on one bench."""
