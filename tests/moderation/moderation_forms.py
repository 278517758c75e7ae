"""A small rubric and marks for the tests of moderation."""

import datetime as dt

from markbench.model import Criterion, Level, Mark, Rubric

AT = dt.datetime(2026, 3, 20, 18, tzinfo=dt.UTC)


def ladder(criterion, most=4):
    levels = tuple(Level(f"L{marks}", float(marks), "") for marks in range(most, -1, -1))
    return Criterion(criterion, criterion.replace("_", " ").title(), levels)


RUBRIC = Rubric("test", "Test rubric", (ladder("raw_data"), ladder("graph"), ladder("result")))


def mark(criterion, marks, by="A. Teacher", at=AT):
    return Mark(criterion, f"L{marks:g}", float(marks), "Text.", by, at)


def marks(*three, by="A. Teacher", at=AT):
    return {c.id: mark(c.id, m, by, at) for c, m in zip(RUBRIC.criteria, three, strict=True)}
