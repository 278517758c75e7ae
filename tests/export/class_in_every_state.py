"""A small invented class in every state of marking, with text meant to do harm."""

import datetime as dt
import math

from markbench.export import ClassReport, LearnerReport
from markbench.model import (
    Analysis,
    Brief,
    Concern,
    Criterion,
    Diagnosis,
    Draft,
    Estimate,
    Explanation,
    Finding,
    Gravity,
    Learner,
    Level,
    LocalGravity,
    Mark,
    Piece,
    Place,
    Portfolio,
    Reading,
    ReadingsTable,
    Row,
    Rubric,
    Source,
    StraightLine,
    Timing,
)

LEVELS = (Level("Full", 4, "All there and right."), Level("Part", 2, "Some of it."))
RUBRIC = Rubric(
    "short",
    "Short rubric",
    tuple(
        Criterion(id_, title, LEVELS, by_eye=id_ == "care")
        for id_, title in (("raw", "Raw data"), ("graph", "Graph"), ("care", "Care"))
    ),
)
AT = dt.datetime(2026, 3, 4, 17, 30, tzinfo=dt.UTC)
LOCAL = LocalGravity(9.8017, 0.0005, "latitude 40°, height 0 m")
LENGTHS_M = (0.2, 0.3, 0.405)


def table(learner):
    file = f"{learner}/readings.xlsx"
    readings = tuple(
        Reading(
            length_m,
            10,
            tuple(
                Timing(time_s, Source(file, "Sheet1", f"{column}{line}"), 2)
                for column, time_s in (("B", 9.1 * math.sqrt(length_m / 0.2)), ("C", 9.2))
            ),
            Source(file, "Sheet1", f"A{line}", f"{100 * length_m:.1f}"),
            0.01,
            1,
        )
        for line, length_m in enumerate(LENGTHS_M, start=2)
    )
    return ReadingsTable(readings, (), Source(file, "Sheet1"))


def analysis(portfolio):
    """Plain numbers, not computed: the export must show them as they are."""
    rows = tuple(
        Row(r.length_m, 10, tuple(t.time_s for t in r.timings), 9.15, 0.0707, 0.915, 0.8372, 9.43)
        for r in portfolio.table.readings
    )
    line = StraightLine(
        4.02834,
        0.05712,
        -0.01934,
        0.0213,
        -0.001,
        0.01,
        (0.0,) * 3,
        (math.nan,) * 3,
        9.80017,
        0.13896,
        3,
    )
    return Analysis(rows, line, LOCAL)


DIAGNOSIS = Diagnosis(
    (
        Explanation(
            "half_swings",
            0.987,
            "The counts may be of half swings.",
            {"factor": Estimate(2.0, 0.01)},
            9.7912,
            0.0712,
        ),
    ),
    Gravity(9.79123, 0.0712, 9.6517, 9.9308, "best"),
    flagged=True,
)


def learner_report(id_, name, marks=(), drafts=(), findings=(), group=""):
    portfolio = Portfolio(
        Learner(id_, name, group),
        (
            Piece(f"{id_}/readings.xlsx", "readings", modified=dt.datetime(2026, 3, 1, 9, 5)),
            Piece(f"{id_}/me.jpg", "photo"),
        ),
        (Piece(f"{id_}/old.csv", "readings"),),
        table(id_),
    )
    return LearnerReport(
        portfolio,
        tuple(findings),
        analysis(portfolio),
        DIAGNOSIS,
        tuple(drafts),
        {mark.criterion: mark for mark in marks},
    )


def mark(criterion, marks, feedback="Well set out."):
    return Mark(criterion, "Full" if marks == 4 else "Part", marks, feedback, "A. Teacher", AT)


def make_report():
    question = Finding(
        "timing_departs",
        "L02",
        "Two timings at 30.0 cm differ by 0.61 s.",
        Concern.ASK,
        sources=(Source("L02/readings.xlsx", "Sheet1", "B3"),),
        ask="How was the second timing taken?",
        honest_rate=0.0049,
    )
    missing = Finding("missing_piece", "L02", "No video.", Concern.LOOK)
    return ClassReport(
        brief=Brief("Pendulum & home", closes=dt.date(2026, 3, 2), place=Place(40.0, 0.0)),
        rubric=RUBRIC,
        program_version="9.8.7",
        date=dt.date(2026, 3, 5),
        learners=(
            learner_report(
                "L01",
                "Ödön Ñandú",
                [mark("raw", 4), mark("graph", 2), mark("care", 4)],
                [Draft("raw", "Part", 2, ("Superseded draft.",))],
                group="7B",
            ),
            learner_report(
                "L02",
                "Bea Invented",
                [mark("raw", 4)],
                [
                    Draft("graph", "Part", 2, ("Your line misses 30 cm.", "Time it again.")),
                    Draft("care", None, None, ()),
                ],
                [question, missing],
            ),
            LearnerReport(Portfolio(Learner("L03", "Cy Empty"))),
        ),
        unowned=(Piece("stray.jpg", "photo"),),
    )
