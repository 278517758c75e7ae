"""Everything known about a class as one JSON file; the format is described in JSON.md."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

from markbench.export.report import ClassReport, LearnerReport
from markbench.model import Analysis, Diagnosis, Finding, Mark, Portfolio, Source, StraightLine
from markbench.moderation.outcome import Outcome
from markbench.moderation.records import SignOff


def write_json(path: Path, report: ClassReport) -> None:
    """Write ``report``; numbers that are not known are null."""
    content = {
        "program": f"markbench {report.program_version}",
        "date": report.date.isoformat(),
        "brief": report.brief.title,
        "rubric": report.rubric.id,
        "signed_off": _signed(report.signed),
        "learners": [_learner(learner) for learner in report.learners],
        "unowned": [piece.file for piece in report.unowned],
        "set_aside": [piece.file for piece in report.set_aside],
        "problems": [_finding(finding) for finding in report.problems],
    }
    path.write_text(
        json.dumps(_finite(content), ensure_ascii=False, indent=1, allow_nan=False), "utf-8"
    )


def _signed(signed: SignOff | None) -> dict[str, str] | None:
    return None if signed is None else {"by": signed.by, "at": signed.at.isoformat()}


def _learner(one: LearnerReport) -> dict[str, Any]:
    portfolio = one.portfolio
    line = one.analysis.line if one.analysis is not None else None
    return {
        "learner": portfolio.learner.id,
        "name": portfolio.learner.name,
        "readings": _readings(portfolio, one.analysis),
        "straight_line": None if line is None else _line(line),
        "local_g": None if one.analysis is None else one.analysis.local.g,
        "best": _best(one.diagnosis),
        "findings": [_finding(finding) for finding in one.findings],
        "slips": _slips(one.diagnosis),
        "evidence": {
            "handed_in": portfolio.handed_in.isoformat() if portfolio.handed_in else None,
            "pieces": [{"file": p.file, "kind": p.kind} for p in portfolio.pieces],
            "earlier": [{"file": p.file, "kind": p.kind} for p in portfolio.earlier],
        },
        "draft": [
            {"criterion": d.criterion, "level": d.level, "marks": d.marks, "feedback": d.feedback}
            for d in one.drafts
        ],
        "marks": [{**_given(mark), "feedback": mark.feedback} for mark in one.marks.values()],
        "result": None if one.outcome is None else _result(one.outcome),
    }


def _result(outcome: Outcome) -> dict[str, Any]:
    late = outcome.late
    return {
        "first_total": outcome.first_total,
        "second_total": outcome.second_total,
        "moderated_total": outcome.moderated_total,
        "adjustment": outcome.shift,
        "late_days": 0 if late is None else late.days,
        "late_marks": 0.0 if late is None else late.marks_off,
        "total": outcome.total,
        "grade": outcome.grade or None,
        "first_marks": [_given(row.first) for row in outcome.criteria if row.first is not None],
        "second_marks": [_given(mark) for row in outcome.criteria for mark in row.seconds],
    }


def _given(mark: Mark) -> dict[str, Any]:
    return {
        "criterion": mark.criterion,
        "level": mark.level,
        "marks": mark.marks,
        "by": mark.by,
        "at": mark.at.isoformat(),
    }


def _readings(portfolio: Portfolio, analysis: Analysis | None) -> list[dict[str, Any]]:
    if portfolio.table is None or analysis is None:
        return []
    return [
        {
            "length_m": reading.length_m,
            "swings": reading.swings,
            "timings_s": [timing.time_s for timing in reading.timings],
            "period_s": row.period_s,
            "g": row.g,
            "source": _source(reading.source),
            "timing_sources": [_source(timing.source) for timing in reading.timings],
        }
        for reading, row in zip(portfolio.table.readings, analysis.rows, strict=True)
    ]


def _line(line: StraightLine) -> dict[str, Any]:
    return {
        "g": line.g,
        "u_g": line.u_g,
        "slope": line.slope_s2_per_m,
        "u_slope": line.u_slope,
        "intercept": line.intercept_s2,
        "u_intercept": line.u_intercept,
        "points": line.points,
        "method": line.method,
    }


def _best(diagnosis: Diagnosis | None) -> dict[str, Any] | None:
    best = diagnosis.best if diagnosis is not None else None
    if best is None:
        return None
    return {
        "g": best.g,
        "u_g": best.u_g,
        "low95": best.low95,
        "high95": best.high95,
        "method": best.method,
    }


def _slips(diagnosis: Diagnosis | None) -> list[dict[str, Any]]:
    return [
        {
            "slip": e.slip,
            "probability": e.probability,
            "g_if_mended": e.g_if_mended,
            "u_g_if_mended": e.u_g_if_mended,
            "sentence": e.sentence,
            "parameters": {
                name: {"value": p.value, "u": p.u, "unit": p.unit}
                for name, p in e.parameters.items()
            },
        }
        for e in (diagnosis.explanations if diagnosis is not None else ())
    ]


def _finding(finding: Finding) -> dict[str, Any]:
    return {
        "check": finding.check,
        "message": finding.message,
        "concern": finding.concern.name.lower(),
        "numbers": dict(finding.numbers),
        "source": [_source(source) for source in finding.sources],
        "ask": finding.ask,
        "who": finding.who,
        "honest_rate": finding.honest_rate,
        "explained_by": finding.explained_by,
    }


def _source(source: Source) -> dict[str, str]:
    return {
        "file": source.file,
        "sheet": source.sheet,
        "cell": source.cell,
        "raw": source.raw,
        "understood": source.understood,
    }


def _finite(value: Any) -> Any:
    """JSON knows no nan or infinity: unknown numbers become null."""
    if isinstance(value, float):
        return value if math.isfinite(value) else None
    if isinstance(value, dict):
        return {key: _finite(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [_finite(item) for item in value]
    if hasattr(value, "item"):
        return _finite(value.item())
    return value
