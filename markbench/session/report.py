"""What goes out of a session: the class report that every export is written from."""

from __future__ import annotations

import datetime as dt

from markbench import __version__
from markbench.export.report import ClassReport, LearnerReport
from markbench.session.session import Session


def class_report(session: Session) -> ClassReport:
    """Everything that may leave the machine; private notes stay behind."""
    return ClassReport(
        brief=session.brief,
        rubric=session.rubric,
        program_version=__version__,
        date=dt.date.today(),
        learners=tuple(
            LearnerReport(
                portfolio=session.portfolio(learner.id),
                analysis=session.analysis(learner.id),
                findings=session.findings(learner.id),
                diagnosis=session.diagnosis(learner.id),
                drafts=session.drafts(learner.id),
                marks=session.marks(learner.id),
            )
            for learner in session.learners
        ),
        unowned=session.work.unowned,
        problems=session.work.problems,
        folder=session.folder,
    )
