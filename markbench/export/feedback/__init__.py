"""What a learner gets back: one sheet on their own work, as PDF and as a web page."""

from markbench.export.feedback.content import FeedbackSheet, feedback_sheet
from markbench.export.feedback.write import (
    LeftOut,
    SheetFiles,
    SheetsWritten,
    write_feedback_sheets,
)

__all__ = [
    "FeedbackSheet",
    "LeftOut",
    "SheetFiles",
    "SheetsWritten",
    "feedback_sheet",
    "write_feedback_sheets",
]
