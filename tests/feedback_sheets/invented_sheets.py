"""Invented learners and classes, with text in them that no sheet may show."""

import dataclasses
import datetime as dt
import io
import math

from pypdf import PdfReader

from markbench.export import ClassReport, LearnerReport
from markbench.export.feedback import feedback_sheet
from markbench.model import (
    Analysis,
    Brief,
    Concern,
    Criterion,
    Diagnosis,
    Draft,
    Explanation,
    Finding,
    Gravity,
    Learner,
    Level,
    LocalGravity,
    Mark,
    Piece,
    Portfolio,
    Reading,
    ReadingsTable,
    Row,
    Rubric,
    Source,
    StraightLine,
    Timing,
)

AT = dt.datetime(2026, 3, 4, 12, 0, tzinfo=dt.UTC)
COPIED = "This table agrees with that of Bea Otherwise in 9 of 10 timings."
DRAFTED = "Sentence that nobody accepted."
EXPLAINED = "The counts may be of half swings."
LEVELS = (Level("Full", 4, "All of it, and right."), Level("Part", 2, "Some of it."))
RUBRIC = Rubric(
    "short",
    "Short rubric",
    tuple(Criterion(i, title, LEVELS) for i, title in (("raw", "Raw data"), ("graph", "Graph"))),
)
# Lengths and T², plain numbers that the sheet must show as they are.
POINTS = ((0.205, 0.8271), (0.304, 1.2233), (0.401, 1.6142), (0.512, 2.0610))
LINE = StraightLine(
    slope_s2_per_m=4.02834,
    u_slope=0.05712,
    intercept_s2=0.11934,
    u_intercept=0.0213,
    covariance=-0.001,
    residual_sd_s2=0.01,
    residuals_s2=(0.0,) * 4,
    studentised=(math.nan,) * 4,
    g=9.80017,
    u_g=0.13896,
    points=4,
)


def learner_report(id_, name, marks=(), group="7B", readings=True):
    file = f"hand-ins/{id_}/readings.xlsx"
    table = ReadingsTable(
        tuple(
            Reading(
                length_m,
                10,
                (Timing(9.11, Source(file), 2), Timing(9.2, Source(file), 1)),
                Source(file, "Sheet1", f"A{line}"),
                0.01,
                1,
            )
            for line, (length_m, _) in enumerate(POINTS, start=2)
        ),
        (),
        Source(file, "Sheet1"),
    )
    rows = tuple(
        Row(length_m, 10, (9.11, 9.2), 9.155, 0.0636, math.sqrt(squared), squared, 9.812)
        for length_m, squared in POINTS
    )
    analysis = Analysis(rows, LINE, LocalGravity(9.8126, 0.0005, "latitude 52.4°, height 85 m"))
    return LearnerReport(
        Portfolio(
            Learner(id_, name, group),
            (Piece(file, "readings"), Piece(f"hand-ins/{id_}/me.jpg", "selfie")),
            table=table if readings else None,
        ),
        (Finding("copied", id_, COPIED, Concern.LOOK, ask="Who worked with whom?"),),
        analysis if readings else None,
        Diagnosis(
            (Explanation("half_swings", 0.98, EXPLAINED, {}),),
            Gravity(9.79123, 0.0712, 9.6517, 9.9308, "best"),
            flagged=True,
        ),
        (Draft("raw", "Part", 2, (DRAFTED,)), Draft("graph", "Part", 2, (DRAFTED,))),
        {mark.criterion: mark for mark in marks},
    )


def mark(criterion, marks, feedback="Well set out."):
    return Mark(criterion, "Full" if marks == 4 else "Part", marks, feedback, "T. Marker", AT)


FULLY = (mark("raw", 4, "Your 9.11 s and 9.2 s at 20.5 cm agree."), mark("graph", 2, "Label it."))


def class_report(*learners, **brief):
    return ClassReport(
        brief=Brief("Pendulum & home", **brief),
        rubric=RUBRIC,
        program_version="9.8.7",
        date=dt.date(2026, 3, 5),
        learners=learners,
    )


def named(report, name):
    """The fully marked learner's sheet under another name."""
    one = report.learners[0]
    learner = dataclasses.replace(one.portfolio.learner, name=name)
    portfolio = dataclasses.replace(one.portfolio, learner=learner)
    return feedback_sheet(report, dataclasses.replace(one, portfolio=portfolio))


def read_back(data):
    """The text of a PDF on one line, by a library other than its writer."""
    pages = (page.extract_text() for page in PdfReader(io.BytesIO(data)).pages)
    return " ".join(" ".join(pages).split())
