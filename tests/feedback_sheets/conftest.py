"""An invented class: one learner fully marked, one partly, one not at all."""

import pytest
from invented_sheets import FULLY, class_report, learner_report, mark

from markbench.export.feedback import feedback_sheet


@pytest.fixture
def report():
    return class_report(
        learner_report("L01", "Nguyễn Thị Ánh", FULLY),
        learner_report("L02", "Bea Otherwise", (mark("raw", 4),)),
        learner_report("L03", "Cy Unmarked"),
    )


@pytest.fixture
def sheet(report):
    return feedback_sheet(report, report.learners[0])
