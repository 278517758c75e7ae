"""What goes out of a session: the class report that every export is written from."""

from __future__ import annotations

import datetime as dt

from markbench import __version__
from markbench.export.report import ClassReport, LearnerReport
from markbench.moderation.records import sign_off_of
from markbench.session.results import results
from markbench.session.session import Session


def class_report(session: Session) -> ClassReport:
    """Everything that may leave the machine, with the marks that hold after moderation.

    A mark of a moderator, or settled by the teacher, keeps the text to the learner of the
    first mark. Private notes stay behind.
    """
    found = results(session)
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
                marks=found[learner.id].held,
                outcome=found[learner.id],
            )
            for learner in session.learners
        ),
        unowned=session.work.unowned,
        set_aside=session.work.set_aside,
        problems=session.work.problems,
        folder=session.folder,
        signed=sign_off_of(session.state),
    )
