"""Criteria, levels and phrases; drafts a level and its sentences with reasons."""
