"""Moderation in the window: the teacher's page, and a pack opened by its moderator."""
