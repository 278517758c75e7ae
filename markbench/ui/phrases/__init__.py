"""The teacher's own phrases, to be dropped in beside a text to a learner."""
